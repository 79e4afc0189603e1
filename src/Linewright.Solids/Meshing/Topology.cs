using System.Runtime.CompilerServices;

namespace Linewright.Solids.Meshing;

/// <summary>Looks at how a mesh's triangles are joined.</summary>
public static class Topology
{
    /// <summary>Inspects a mesh.</summary>
    public static TopologyReport Inspect(Mesh mesh)
    {
        ArgumentNullException.ThrowIfNull(mesh);
        var sides = new SortedSides(mesh);
        int edges = 0, used = 0;
        bool isClosed = true, isManifold = true, isOriented = true;
        for (var v = 0; v < mesh.VertexCount; v++)
        {
            var around = sides.At(v);
            used += sides.IsUsed(v) ? 1 : 0;
            for (var i = 0; i < around.Length;)
            {
                // All triangle sides between this vertex and one of higher index.
                int other = around[i].Other, forward = 0, backward = 0;
                for (; i < around.Length && around[i].Other == other; i++)
                {
                    forward += around[i].IsForward ? 1 : 0;
                    backward += around[i].IsForward ? 0 : 1;
                }

                edges++;
                isManifold &= forward + backward <= 2 && other != v;
                isOriented &= forward <= 1 && backward <= 1;
                isClosed &= forward + backward >= 2;
            }
        }

        isManifold &= HasOneFanAtEachVertex(mesh, out var components);
        var euler = used - edges + mesh.TriangleCount;
        var genus = isClosed && isManifold && isOriented ? components - euler / 2 : -1;
        return new TopologyReport(isClosed, isManifold, isOriented, genus, components, euler);
    }

    /// <summary>Each vertex's triangles must hang together through edges at that vertex; counts components on the way.</summary>
    [MethodImpl(MethodImplOptions.AggressiveOptimization)]
    private static bool HasOneFanAtEachVertex(Mesh mesh, out int components)
    {
        var triangles = mesh.Triangles;
        var count = mesh.VertexCount;
        var first = new int[count + 1];
        foreach (var v in triangles)
        {
            first[v + 1]++;
        }

        for (var v = 0; v < count; v++)
        {
            first[v + 1] += first[v];
        }

        var corners = new int[triangles.Length];
        var next = first.AsSpan(0, count).ToArray();
        var parent = new int[count];
        for (var v = 0; v < count; v++)
        {
            parent[v] = v;
        }

        for (var i = 0; i < triangles.Length; i++)
        {
            corners[next[triangles[i]]++] = i;
            parent[Root(parent, triangles[i])] = Root(parent, triangles[i - i % 3]);
        }

        components = 0;
        var isOneFan = true;
        var fan = new List<(int From, int To)>();
        for (var v = 0; v < count; v++)
        {
            if (first[v] == first[v + 1])
            {
                continue;
            }

            components += parent[v] == v ? 1 : 0;
            fan.Clear();
            for (var i = first[v]; i < first[v + 1]; i++)
            {
                var corner = corners[i];
                var triangle = corner - corner % 3;
                fan.Add((triangles[triangle + (corner + 1) % 3], triangles[triangle + (corner + 2) % 3]));
            }

            isOneFan &= IsOneFan(fan);
        }

        return isOneFan;
    }

    private static bool IsOneFan(List<(int From, int To)> sides)
    {
        // Grow the fan from its first triangle, whichever way round the others run.
        int reached = 1;
        for (var i = 0; i < reached; i++)
        {
            for (var j = reached; j < sides.Count; j++)
            {
                var (a, b) = sides[i];
                var (c, d) = sides[j];
                if (a == c || a == d || b == c || b == d)
                {
                    (sides[reached], sides[j]) = (sides[j], sides[reached]);
                    reached++;
                }
            }
        }

        return reached == sides.Count;
    }

    private static int Root(int[] parent, int v)
    {
        while (parent[v] != v)
        {
            parent[v] = parent[parent[v]];
            v = parent[v];
        }

        return v;
    }
}
