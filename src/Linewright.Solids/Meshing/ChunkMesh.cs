using System.Runtime.CompilerServices;

namespace Linewright.Solids.Meshing;

/// <summary>A piece of a mesh whose edges can be collapsed: triangles listed at each vertex.</summary>
/// <remarks>
/// A corner is a triangle's number times three plus its place; the corners at a vertex form a list. Held vertices
/// (shared with another piece, or held fast) never move, and their lists may be incomplete.
/// </remarks>
internal sealed class ChunkMesh
{
    private readonly int[] next;
    private readonly int[] last;

    public ChunkMesh(float[] positions, int[] corners, bool[] isHeld, int[] faceOf)
    {
        Positions = positions;
        Corners = corners;
        IsHeld = isHeld;
        FaceOf = faceOf;
        First = new int[isHeld.Length];
        last = new int[isHeld.Length];
        next = new int[corners.Length];
        IsDead = new bool[corners.Length / 3];
        Array.Fill(First, -1);
        for (var corner = 0; corner < corners.Length; corner++)
        {
            var v = corners[corner];
            next[corner] = First[v];
            last[v] = First[v] < 0 ? corner : last[v];
            First[v] = corner;
        }
    }

    /// <summary>x, y, z of each vertex.</summary>
    public float[] Positions { get; }

    /// <summary>Vertex of each corner.</summary>
    public int[] Corners { get; }

    /// <summary>True for vertices that must stay.</summary>
    public bool[] IsHeld { get; }

    /// <summary>Flat face of each triangle, or <see cref="FlatFaces.None"/>.</summary>
    public int[] FaceOf { get; }

    /// <summary>True for triangles that are gone.</summary>
    public bool[] IsDead { get; }

    /// <summary>First corner at each vertex, -1 for none.</summary>
    public int[] First { get; }

    /// <summary>The next corner at the same vertex, -1 at the end.</summary>
    public int Next(int corner) => next[corner];

    /// <summary>The next corner of the same triangle.</summary>
    public static int Turn(int corner) => corner % 3 == 2 ? corner - 2 : corner + 1;

    /// <summary>Takes the corners of dead triangles off a vertex's list.</summary>
    [MethodImpl(MethodImplOptions.AggressiveOptimization)]
    public void Clean(int vertex)
    {
        var previous = -1;
        for (var corner = First[vertex]; corner >= 0; corner = next[corner])
        {
            if (!IsDead[corner / 3])
            {
                previous = corner;
            }
            else if (previous < 0)
            {
                First[vertex] = next[corner];
            }
            else
            {
                next[previous] = next[corner];
            }
        }

        last[vertex] = previous;
    }

    /// <summary>Moves vertex a to a point and lets it take over the triangles of b; the two triangles between them die.</summary>
    [MethodImpl(MethodImplOptions.AggressiveOptimization)]
    public void Merge(int a, int b, float x, float y, float z)
    {
        for (var corner = First[a]; corner >= 0; corner = next[corner])
        {
            var ahead = Turn(corner);
            if (Corners[ahead] == b || Corners[Turn(ahead)] == b)
            {
                IsDead[corner / 3] = true;
            }
        }

        for (var corner = First[b]; corner >= 0; corner = next[corner])
        {
            Corners[corner] = a;
        }

        next[last[a]] = First[b];
        last[a] = last[b];
        First[b] = -1;
        (Positions[a * 3], Positions[a * 3 + 1], Positions[a * 3 + 2]) = (x, y, z);
        Clean(a);
    }
}
