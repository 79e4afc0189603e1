using Linewright.Files;
using Linewright.Solids.Meshing;
using Linewright.Solids.Outlines;
using Linewright.Solids.Polyhedra;
using Linewright.Solids.Shapes;
using Linewright.Solids.Space;

namespace Linewright.Tests.Solids;

/// <summary>A body as the triangles that rays are to meet, and as what is to be drawn of it.</summary>
internal sealed record RayBody(Vec3[] Corners, Vec3[] Normals, OutlineBody Drawn)
{
    /// <summary>A solid, meshed within 5 um and shaded as the files are.</summary>
    public static RayBody Of(Solid solid, double cell)
    {
        var mesh = Mesher.Run(solid, new MeshSettings(cell, 0.005, true), threads: 1).Mesh;
        var surface = CreasedNormals.Of(mesh, solid);
        Vec3 At(IReadOnlyList<float> from, int vertex) => new(from[3 * vertex], from[3 * vertex + 1], from[3 * vertex + 2]);
        return new RayBody(
            [.. surface.Triangles.Select(v => At(surface.Positions, v))],
            [.. surface.Triangles.Select(v => At(surface.Normals, v))],
            OutlineBody.Of(surface.Positions, surface.Normals, surface.Triangles));
    }

    /// <summary>A body with flat faces, at a place.</summary>
    public static RayBody Of(ConvexPolyhedron body, double crease)
    {
        List<Vec3> corners = [], normals = [];
        foreach (var face in body.Faces)
        {
            for (var i = 2; i < face.Loop.Length; i++)
            {
                corners.AddRange([body.Vertices[face.Loop[0]], body.Vertices[face.Loop[i - 1]], body.Vertices[face.Loop[i]]]);
                normals.AddRange([face.Plane.Normal, face.Plane.Normal, face.Plane.Normal]);
            }
        }

        return new RayBody([.. corners], [.. normals], OutlineBody.Of(body, crease));
    }

    /// <summary>Where it stands.</summary>
    public Pose Pose { get; init; } = Pose.Identity;
}
