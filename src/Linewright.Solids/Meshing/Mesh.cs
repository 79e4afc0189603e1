using Linewright.Solids.Space;

namespace Linewright.Solids.Meshing;

/// <summary>A surface of triangles in mm. Counter-clockwise seen from outside. Never changes once built.</summary>
/// <remarks>Positions are single precision, as every mesh file format carries them; three numbers a vertex, three indices a triangle.</remarks>
public sealed class Mesh
{
    private readonly float[] positions;
    private readonly int[] triangles;

    /// <summary>Takes the arrays over without a copy: the caller must not write to them afterwards.</summary>
    /// <exception cref="ArgumentException">An array's length is no multiple of three, or an index points past the vertices.</exception>
    public Mesh(float[] positions, int[] triangles)
    {
        ArgumentNullException.ThrowIfNull(positions);
        ArgumentNullException.ThrowIfNull(triangles);
        if (positions.Length % 3 != 0 || triangles.Length % 3 != 0)
        {
            throw new ArgumentException("positions and triangles come in threes");
        }

        var count = positions.Length / 3;
        foreach (var index in triangles)
        {
            if ((uint)index >= (uint)count)
            {
                throw new ArgumentException("a triangle points past the last vertex", nameof(triangles));
            }
        }

        this.positions = positions;
        this.triangles = triangles;
    }

    /// <summary>Number of vertices.</summary>
    public int VertexCount => positions.Length / 3;

    /// <summary>Number of triangles.</summary>
    public int TriangleCount => triangles.Length / 3;

    /// <summary>x, y, z of each vertex in turn, mm.</summary>
    public ReadOnlySpan<float> Positions => positions;

    /// <summary>Three vertex indices a triangle.</summary>
    public ReadOnlySpan<int> Triangles => triangles;

    /// <summary>Position of one vertex.</summary>
    public Vec3 Vertex(int index) => new(positions[index * 3], positions[index * 3 + 1], positions[index * 3 + 2]);

    /// <summary>The vertices' bounding box.</summary>
    public Bounds Bounds
    {
        get
        {
            var box = Bounds.Empty;
            for (var i = 0; i < VertexCount; i++)
            {
                var p = Vertex(i);
                box = box.Join(new Bounds(p, p));
            }

            return box;
        }
    }

    /// <summary>The same surface scaled about the origin.</summary>
    public Mesh Scaled(double factor)
    {
        Guard.Positive(factor);
        var scaled = new float[positions.Length];
        for (var i = 0; i < scaled.Length; i++)
        {
            scaled[i] = (float)(positions[i] * factor);
        }

        return new Mesh(scaled, triangles);
    }

    /// <summary>The same surface placed elsewhere; a mirrored pose turns the triangles round so that outside stays outside.</summary>
    public Mesh Moved(Pose pose)
    {
        var moved = new float[positions.Length];
        for (var i = 0; i < VertexCount; i++)
        {
            var p = pose.Point(Vertex(i));
            moved[i * 3] = (float)p.X;
            moved[i * 3 + 1] = (float)p.Y;
            moved[i * 3 + 2] = (float)p.Z;
        }

        if (!pose.IsMirrored)
        {
            return new Mesh(moved, triangles);
        }

        var turned = new int[triangles.Length];
        for (var i = 0; i < turned.Length; i += 3)
        {
            (turned[i], turned[i + 1], turned[i + 2]) = (triangles[i], triangles[i + 2], triangles[i + 1]);
        }

        return new Mesh(moved, turned);
    }
}
