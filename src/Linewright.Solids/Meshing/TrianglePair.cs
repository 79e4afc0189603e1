using System.Numerics;
using System.Runtime.CompilerServices;

namespace Linewright.Solids.Meshing;

/// <summary>Whether two triangles of a mesh meet anywhere but at the vertices and the edge that they share.</summary>
/// <remarks>
/// Decided exactly. Touching counts as meeting: a vertex on another triangle, two edges that cross. Triangles that
/// share a vertex meet elsewhere just where the side of one that lies opposite that vertex meets the other. Triangles
/// that share an edge meet elsewhere just where they lie in one plane on the same side of it.
/// </remarks>
internal static class TrianglePair
{
    /// <summary>Looks at two triangles given by their three vertices.</summary>
    [MethodImpl(MethodImplOptions.AggressiveOptimization)]
    public static bool Meet(ReadOnlySpan<float> positions, ReadOnlySpan<int> s, ReadOnlySpan<int> t)
    {
        Span<int> restS = stackalloc int[3], restT = stackalloc int[3];
        int sharedS = 0, countS = 0, countT = 0;
        foreach (var v in s)
        {
            if (t.Contains(v))
            {
                sharedS++;
            }
            else
            {
                restS[countS++] = v;
            }
        }

        foreach (var v in t)
        {
            if (!s.Contains(v))
            {
                restT[countT++] = v;
            }
        }

        if (sharedS == 3)
        {
            return true;
        }

        if (Separation.IsClear(positions, s, t, restS[..countS], restT[..countT]))
        {
            return false;
        }

        Vector3 a = At(positions, s[0]), b = At(positions, s[1]), c = At(positions, s[2]);
        Vector3 d = At(positions, t[0]), e = At(positions, t[1]), f = At(positions, t[2]);
        if (sharedS == 2)
        {
            return IsFolded(positions, s, restS[0], restT[0]);
        }

        // Most pairs end here: one triangle lies on one side of the other's plane.
        int sideD = Orientation.Side(a, b, c, d), sideE = Orientation.Side(a, b, c, e), sideF = Orientation.Side(a, b, c, f);
        if (sharedS == 1)
        {
            int p = restT[0] == t[0] ? sideD : sideE, q = restT[1] == t[2] ? sideF : sideE;
            if (p * q > 0)
            {
                return false;
            }

            return SegmentMeets(At(positions, restT[0]), At(positions, restT[1]), a, b, c)
                || SegmentMeets(At(positions, restS[0]), At(positions, restS[1]), d, e, f);
        }

        if (sideD == sideE && sideE == sideF && sideD != 0)
        {
            return false;
        }

        return SegmentMeets(a, b, d, e, f) || SegmentMeets(b, c, d, e, f) || SegmentMeets(c, a, d, e, f)
            || SegmentMeets(d, e, a, b, c) || SegmentMeets(e, f, a, b, c) || SegmentMeets(f, d, a, b, c);
    }

    /// <summary>True where a triangle has no area, exactly.</summary>
    public static bool IsFlat(ReadOnlySpan<float> positions, ReadOnlySpan<int> t)
        => t[0] == t[1] || t[1] == t[2] || t[2] == t[0]
            || FreeAxis(At(positions, t[0]), At(positions, t[1]), At(positions, t[2])) < 0;

    private static Vector3 At(ReadOnlySpan<float> positions, int v) => new(positions[v * 3], positions[v * 3 + 1], positions[v * 3 + 2]);

    private static bool IsFolded(ReadOnlySpan<float> positions, ReadOnlySpan<int> s, int apexS, int apexT)
    {
        Vector3 a = At(positions, s[0]), b = At(positions, s[1]), c = At(positions, s[2]), apex = At(positions, apexT);
        if (Orientation.Side(a, b, c, apex) != 0)
        {
            return false;
        }

        var axis = FreeAxis(a, b, c);
        if (axis < 0)
        {
            return true;
        }

        // In one plane: folded where both apexes lie on the same side of the shared edge.
        var at = s.IndexOf(apexS);
        Vector3 from = At(positions, s[(at + 1) % 3]), to = At(positions, s[(at + 2) % 3]);
        return Turn(axis, from, to, At(positions, apexS)) == Turn(axis, from, to, apex);
    }

    private static bool SegmentMeets(in Vector3 p, in Vector3 q, in Vector3 a, in Vector3 b, in Vector3 c)
    {
        int sideP = Orientation.Side(a, b, c, p), sideQ = Orientation.Side(a, b, c, q);
        if (sideP * sideQ > 0)
        {
            return false;
        }

        if (sideP == 0 && sideQ == 0)
        {
            return SegmentMeetsInPlane(p, q, a, b, c);
        }

        int ab = Orientation.Side(p, q, a, b), bc = Orientation.Side(p, q, b, c), ca = Orientation.Side(p, q, c, a);
        return (ab >= 0 && bc >= 0 && ca >= 0) || (ab <= 0 && bc <= 0 && ca <= 0);
    }

    private static bool SegmentMeetsInPlane(in Vector3 p, in Vector3 q, in Vector3 a, in Vector3 b, in Vector3 c)
    {
        var axis = FreeAxis(a, b, c);
        return axis < 0
            || IsInside(axis, p, a, b, c) || IsInside(axis, q, a, b, c)
            || Cross(axis, p, q, a, b) || Cross(axis, p, q, b, c) || Cross(axis, p, q, c, a);
    }

    /// <summary>An axis along which the triangle can be looked at without vanishing; -1 where it has no area.</summary>
    private static int FreeAxis(in Vector3 a, in Vector3 b, in Vector3 c)
        => Turn(2, a, b, c) != 0 ? 2 : Turn(1, a, b, c) != 0 ? 1 : Turn(0, a, b, c) != 0 ? 0 : -1;

    private static int Turn(int axis, in Vector3 a, in Vector3 b, in Vector3 c) => axis switch
    {
        0 => Orientation.Turn(a.Y, a.Z, b.Y, b.Z, c.Y, c.Z),
        1 => Orientation.Turn(a.Z, a.X, b.Z, b.X, c.Z, c.X),
        _ => Orientation.Turn(a.X, a.Y, b.X, b.Y, c.X, c.Y),
    };

    private static bool IsInside(int axis, in Vector3 p, in Vector3 a, in Vector3 b, in Vector3 c)
    {
        int ab = Turn(axis, a, b, p), bc = Turn(axis, b, c, p), ca = Turn(axis, c, a, p);
        return (ab >= 0 && bc >= 0 && ca >= 0) || (ab <= 0 && bc <= 0 && ca <= 0);
    }

    private static bool Cross(int axis, in Vector3 p, in Vector3 q, in Vector3 a, in Vector3 b)
    {
        // Ends on a line were seen by the test for inside, but for a corner of the triangle within the segment.
        int pqa = Turn(axis, p, q, a), pqb = Turn(axis, p, q, b), abp = Turn(axis, a, b, p), abq = Turn(axis, a, b, q);
        if (pqa == 0 && pqb == 0)
        {
            return IsBetween(a, p, q) || IsBetween(b, p, q);
        }

        return pqa * pqb <= 0 && abp * abq <= 0;
    }

    /// <summary>For three points on one line.</summary>
    private static bool IsBetween(in Vector3 p, in Vector3 a, in Vector3 b)
        => p.X >= Math.Min(a.X, b.X) && p.X <= Math.Max(a.X, b.X)
            && p.Y >= Math.Min(a.Y, b.Y) && p.Y <= Math.Max(a.Y, b.Y)
            && p.Z >= Math.Min(a.Z, b.Z) && p.Z <= Math.Max(a.Z, b.Z);
}
