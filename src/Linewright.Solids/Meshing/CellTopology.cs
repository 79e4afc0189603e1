using System.Numerics;

namespace Linewright.Solids.Meshing;

/// <summary>Which edges of a cell the surface cuts, and which of them lie on one sheet of it.</summary>
/// <remarks>
/// Corner c has x in bit 0, y in bit 1, z in bit 2. Edge e runs along axis e / 4 and starts at the corner whose
/// coordinates on the next two axes are the bits of e % 4. Face f is normal to axis f / 2, on its low or high side.
/// A pattern has bit c set where corner c is inside. On a face whose corners alternate, the face's middle decides
/// whether its inside corners are joined: both cells at that face see the same middle, which closes the surface.
/// (Always keeping them apart cut grooves into sharp edges.) A form is a pattern with these decisions; each of its
/// sheets gets one vertex.
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

    /// <summary>Bit f set where the corners of face f alternate; by pattern.</summary>
    public static readonly byte[] AlternatingOf = new byte[256];

    /// <summary>Number of sheets; by form.</summary>
    public static readonly byte[] SheetsOf;

    /// <summary>Sheet of edge e at form * 12 + e; undefined for edges that are not cut.</summary>
    public static readonly byte[] SheetOf;

    // First form of each pattern; the others follow in the order of the alternating faces' joined bits.
    private static readonly int[] FirstForm = new int[256];

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

        var forms = 0;
        for (var pattern = 0; pattern < 256; pattern++)
        {
            FindCuts(pattern);
            FirstForm[pattern] = forms;
            forms += 1 << BitOperations.PopCount(AlternatingOf[pattern]);
        }

        SheetsOf = new byte[forms];
        SheetOf = new byte[forms * Edges];
        for (var pattern = 0; pattern < 256; pattern++)
        {
            for (var joined = 0; joined < 1 << Faces; joined++)
            {
                if ((joined & ~AlternatingOf[pattern]) == 0)
                {
                    Fill(pattern, joined, FormOf(pattern, joined));
                }
            }
        }
    }

    /// <summary>The form of a pattern whose alternating faces are joined where the mask says.</summary>
    public static int FormOf(int pattern, int joined)
    {
        int offset = 0, bit = 0;
        for (int rest = AlternatingOf[pattern]; rest != 0; rest &= rest - 1, bit++)
        {
            offset |= ((joined >> BitOperations.TrailingZeroCount(rest)) & 1) << bit;
        }

        return FirstForm[pattern] + offset;
    }

    private static int EdgeBetween(int from, int to)
    {
        int low = Math.Min(from, to), axis = BitOperations.TrailingZeroCount(from ^ to);
        return axis * 4 + ((low >> ((axis + 1) % 3)) & 1) + 2 * ((low >> ((axis + 2) % 3)) & 1);
    }

    private static void FindCuts(int pattern)
    {
        for (var edge = 0; edge < Edges; edge++)
        {
            int start = StartOf[edge], end = start | (1 << (edge >> 2));
            CutOf[pattern] |= (ushort)((((pattern >> start) ^ (pattern >> end)) & 1) << edge);
        }

        for (var face = 0; face < Faces; face++)
        {
            var alternates = true;
            foreach (var edge in FaceEdges.AsSpan(face * 4, 4))
            {
                alternates &= ((CutOf[pattern] >> edge) & 1) != 0;
            }

            AlternatingOf[pattern] |= (byte)(alternates ? 1 << face : 0);
        }
    }

    private static void Fill(int pattern, int joined, int form)
    {
        Span<int> parent = stackalloc int[Edges];
        for (var edge = 0; edge < Edges; edge++)
        {
            parent[edge] = edge;
        }

        for (var face = 0; face < Faces; face++)
        {
            if (((AlternatingOf[pattern] >> face) & 1) != 0)
            {
                JoinAlternating(pattern, face, ((joined >> face) & 1) != 0, parent);
            }
            else
            {
                JoinPlain(pattern, face, parent);
            }
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
                sheet[root] = SheetsOf[form]++;
            }

            SheetOf[form * Edges + edge] = (byte)sheet[root];
        }
    }

    /// <summary>Cuts off the two inside corners of a face, or the two outside ones where the inside is joined.</summary>
    private static void JoinAlternating(int pattern, int face, bool isJoined, Span<int> parent)
    {
        var edges = FaceEdges.AsSpan(face * 4, 4);
        for (var i = 0; i < 4; i++)
        {
            if (((pattern >> FaceCorners[face * 4 + i]) & 1) != 0 != isJoined)
            {
                parent[Root(parent, edges[i])] = Root(parent, edges[(i + 3) & 3]);
            }
        }
    }

    private static void JoinPlain(int pattern, int face, Span<int> parent)
    {
        var first = -1;
        foreach (var edge in FaceEdges.AsSpan(face * 4, 4))
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
