using Linewright.Solids.Space;

namespace Linewright.Files;

/// <summary>What goes into one assembly file: every unique part with its places. mm, x along the line, y across, z up.</summary>
/// <param name="Name">The piece's name.</param>
/// <param name="Parts">Parts in the order in which the file lists them; at least one.</param>
public sealed record FileScene(string Name, IReadOnlyList<MeshPart> Parts)
{
    public string Name { get; } = ReadableName.Checked(Name);

    public IReadOnlyList<MeshPart> Parts { get; } = Filled(Parts);

    /// <summary>Different materials in order of first use.</summary>
    public IReadOnlyList<FileMaterial> Materials => [.. Parts.Select(part => part.Material).Distinct()];

    /// <summary>The box around every placed vertex, mm.</summary>
    public Bounds Bounds
    {
        get
        {
            var box = Bounds.Empty;
            foreach (var part in Parts)
            {
                foreach (var pose in part.Placements)
                {
                    for (var i = 0; i < part.Mesh.VertexCount; i++)
                    {
                        var p = pose.Point(part.Mesh.Vertex(i));
                        box = box.Join(new Bounds(p, p));
                    }
                }
            }

            return box;
        }
    }

    private static MeshPart[] Filled(IReadOnlyList<MeshPart> parts)
    {
        ArgumentNullException.ThrowIfNull(parts);
        return parts.Count > 0 ? [.. parts] : throw new ArgumentException("a scene has at least one part", nameof(parts));
    }
}
