using System.Globalization;
using Linewright.Solids.Meshing;
using Linewright.Solids.Space;

namespace Linewright.Files;

/// <summary>A unique part and every place where the assembly has it: one mesh, one or more instances.</summary>
/// <remarks>
/// Placements are rigid. A mirrored part is another casting, so a mirrored placement is refused here:
/// mirror the mesh and give it a part of its own.
/// </remarks>
/// <param name="Name">The part's name, such as "link".</param>
/// <param name="Mesh">Its surface in its own frame, mm, not empty.</param>
/// <param name="Placements">From the part's frame to the assembly's, in the order along the line; at least one.</param>
/// <param name="Material">What it is made of.</param>
public sealed record MeshPart(string Name, Mesh Mesh, IReadOnlyList<Pose> Placements, FileMaterial Material)
{
    public string Name { get; } = ReadableName.Checked(Name);

    public Mesh Mesh { get; } = Covered(Mesh);

    public IReadOnlyList<Pose> Placements { get; } = Rigid(Placements);

    public FileMaterial Material { get; } = Material ?? throw new ArgumentNullException(nameof(Material));

    /// <summary>The number under which the workshop keeps the part; its name where it has none.</summary>
    public string PartNumber
    {
        get;
        init => field = ReadableName.Checked(value);
    }
    = Name;

    /// <summary>True for a stone: every triangle is shaded as the flat facet that it is. False for metal, shaded smooth up to its edges.</summary>
    public bool Faceted { get; init; }

    /// <summary>The mesh with the normals that files for the eye give it; null where they are found from its triangles.</summary>
    public CreasedNormals? Shading { get; init; }

    /// <summary>The placements with names: the part's own name where there is one, numbered from 1 where there are more.</summary>
    public IReadOnlyList<PartInstance> Instances
    {
        get
        {
            var digits = Placements.Count.ToString(CultureInfo.InvariantCulture).Length;
            var format = "D" + digits.ToString(CultureInfo.InvariantCulture);
            return [.. Placements.Select((pose, i) => new PartInstance(
                Placements.Count == 1 ? Name : Name + " " + (i + 1).ToString(format, CultureInfo.InvariantCulture), pose))];
        }
    }

    private static Mesh Covered(Mesh mesh)
    {
        ArgumentNullException.ThrowIfNull(mesh);
        foreach (var coordinate in mesh.Positions)
        {
            Guard.Finite(coordinate);
        }

        return mesh.TriangleCount > 0 ? mesh : throw new ArgumentException("a part has at least one triangle", nameof(mesh));
    }

    private static Pose[] Rigid(IReadOnlyList<Pose> placements)
    {
        ArgumentNullException.ThrowIfNull(placements);
        if (placements.Count == 0)
        {
            throw new ArgumentException("a part lies in at least one place", nameof(placements));
        }

        foreach (var pose in placements)
        {
            if (pose.IsMirrored)
            {
                throw new ArgumentException("a mirrored part is another part: mirror its mesh instead", nameof(placements));
            }
        }

        return [.. placements];
    }
}
