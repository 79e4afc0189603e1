using System.Numerics;

namespace Linewright.Solids.Meshing;

/// <summary>Which edges of a cell the surface cuts, and which of them lie on one sheet of it, for all 256 sign patterns.</summary>
/// <remarks>
/// Corner c has x in bit 0, y in bit 1, z in bit 2. Edge e runs along axis e / 4 and starts at the corner whose
/// coordinates on the next two axes are the bits of e % 4. Face f is normal to axis f / 2, on its low or high side.
/// A pattern has bit c set where corner c is inside. On a face whose corners alternate, the inside corners are kept
/// apart: both cells at that face decide alike, which closes the surface. Each sheet gets one vertex.
/// Source: G. M. Nielson (2004), Dual marching cubes, IEEE Visualization (the idea of one vertex a sheet).
/// </remarks>
internal static class CellTopology
{
    public const int Edges = 12;
    private const int Faces = 6;

    /// <summary>Corner where each edge starts.</summary>
    public static readonly byte[] StartOf = new byte[Edges];

    /// <summary>Bit e set where edge e is cut; by pattern.</summary>
    public static readonly ushort[] CutOf = new ushort[256];

    /// <summary>Number of sheets; by pattern.</summary>
    public static readonly byte[] SheetsOf = new byte[256];

    /// <summary>Sheet of edge e at pattern * 12 + e; undefined for edges that are not cut.</summary>
    public static readonly byte[] SheetOf = new byte[256 * Edges];

    /// <summary>True where a pattern has a face whose corners alternate.</summary>
    public static readonly bool[] IsAmbiguous = new bool[256];

    // Four corners in turn, and the edge from each to the next.
    private static readonly int[] FaceCorners = new int[Faces * 4], FaceEdges = new int[Faces * 4];

    static CellTopology()
    {
        for (var edge = 0; edge < Edges; edge++)
        {
            int axis = edge >> 2, low = edge & 1, high = (edge >> 1) & 1;
            StartOf[edge] = (byte)((low << ((axis + 1) % 3)) | (high << ((axis + 2) % 3)));
        }

        for (var face = 0; face < Faces; face++)
        {
            int axis = face >> 1, u = 1 << ((axis + 1) % 3), v = 1 << ((axis + 2) % 3), side = (face & 1) << axis;
            ReadOnlySpan<int> corners = [side, side | u, side | u | v, side | v];
            for (var i = 0; i < 4; i++)
            {
                FaceCorners[face * 4 + i] = corners[i];
                FaceEdges[face * 4 + i] = EdgeBetween(corners[i], corners[(i + 1) & 3]);
            }
        }

        for (var pattern = 0; pattern < 256; pattern++)
        {
            Fill(pattern);
        }
    }

    private static int EdgeBetween(int from, int to)
    {
        int low = Math.Min(from, to), axis = BitOperations.TrailingZeroCount(from ^ to);
        return axis * 4 + ((low >> ((axis + 1) % 3)) & 1) + 2 * ((low >> ((axis + 2) % 3)) & 1);
    }

    private static void Fill(int pattern)
    {
        Span<int> parent = stackalloc int[Edges];
        for (var edge = 0; edge < Edges; edge++)
        {
            parent[edge] = edge;
            int start = StartOf[edge], end = start | (1 << (edge >> 2));
            if (((pattern >> start) & 1) != ((pattern >> end) & 1))
            {
                CutOf[pattern] |= (ushort)(1 << edge);
            }
        }

        for (var face = 0; face < Faces; face++)
        {
            Join(pattern, face, parent);
        }

        // Number the sheets in the order of their first edge.
        Span<int> sheet = stackalloc int[Edges];
        sheet.Fill(-1);
        for (var edge = 0; edge < Edges; edge++)
        {
            if (((CutOf[pattern] >> edge) & 1) == 0)
            {
                continue;
            }

            var root = Root(parent, edge);
            if (sheet[root] < 0)
            {
                sheet[root] = SheetsOf[pattern]++;
            }

            SheetOf[pattern * Edges + edge] = (byte)sheet[root];
        }
    }

    private static void Join(int pattern, int face, Span<int> parent)
    {
        var edges = FaceEdges.AsSpan(face * 4, 4);
        int cut = 0, first = -1;
        foreach (var edge in edges)
        {
            cut += (CutOf[pattern] >> edge) & 1;
        }

        if (cut == 4)
        {
            IsAmbiguous[pattern] = true;
            for (var i = 0; i < 4; i++)
            {
                if (((pattern >> FaceCorners[face * 4 + i]) & 1) != 0)
                {
                    parent[Root(parent, edges[i])] = Root(parent, edges[(i + 3) & 3]);
                }
            }

            return;
        }

        foreach (var edge in edges)
        {
            if (((CutOf[pattern] >> edge) & 1) == 0)
            {
                continue;
            }

            if (first >= 0)
            {
                parent[Root(parent, edge)] = Root(parent, first);
            }

            first = edge;
        }
    }

    private static int Root(Span<int> parent, int edge)
    {
        while (parent[edge] != edge)
        {
            edge = parent[edge];
        }

        return edge;
    }
}
