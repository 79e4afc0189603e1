namespace Linewright.Solids.Meshing;

/// <summary>The sides of all triangles, listed at the lower of their two vertices and sorted by the higher.</summary>
internal sealed class SortedSides
{
    private readonly int[] first;
    private readonly Side[] sides;
    private readonly bool[] isUsed;

    public SortedSides(Mesh mesh)
    {
        var triangles = mesh.Triangles;
        first = new int[mesh.VertexCount + 1];
        isUsed = new bool[mesh.VertexCount];
        for (var i = 0; i < triangles.Length; i++)
        {
            isUsed[triangles[i]] = true;
            first[Math.Min(triangles[i], triangles[Next(i)]) + 1]++;
        }

        for (var v = 0; v < mesh.VertexCount; v++)
        {
            first[v + 1] += first[v];
        }

        sides = new Side[triangles.Length];
        var next = first.AsSpan(0, mesh.VertexCount).ToArray();
        for (var i = 0; i < triangles.Length; i++)
        {
            int from = triangles[i], to = triangles[Next(i)];
            sides[next[Math.Min(from, to)]++] = new Side(Math.Max(from, to), from < to);
        }

        for (var v = 0; v < mesh.VertexCount; v++)
        {
            sides.AsSpan(first[v], first[v + 1] - first[v]).Sort(static (a, b) => a.Other.CompareTo(b.Other));
        }
    }

    /// <summary>The sides listed at a vertex.</summary>
    public ReadOnlySpan<Side> At(int vertex) => sides.AsSpan(first[vertex], first[vertex + 1] - first[vertex]);

    /// <summary>True where a triangle uses the vertex.</summary>
    public bool IsUsed(int vertex) => isUsed[vertex];

    private static int Next(int corner) => corner % 3 == 2 ? corner - 2 : corner + 1;

    /// <summary>A side of a triangle, seen from its lower vertex.</summary>
    /// <param name="Other">The higher vertex.</param>
    /// <param name="IsForward">True where the triangle runs from the lower to the higher vertex.</param>
    public readonly record struct Side(int Other, bool IsForward);
}
