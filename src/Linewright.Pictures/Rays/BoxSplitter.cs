using System.Runtime.CompilerServices;
using System.Runtime.Intrinsics;

namespace Linewright.Pictures.Rays;

/// <summary>Cuts a run of boxes in two where rays will have least to do: surface times count on both sides.</summary>
/// <remarks>
/// Source: Wald (2007), On fast construction of SAH-based bounding volume hierarchies: candidate cuts are the borders of
/// a few equal bins. Long runs are cut along their longest side only; near the leaves, where the choice of axis matters,
/// all three are tried. Counts are rounded up to full blocks of eight, since a block costs the same however full.
/// </remarks>
internal static unsafe class BoxSplitter
{
    private const int Bins = 16;

    /// <summary>Runs longer than this are cut along their longest side. Measured: trying all axes there costs time and gains no speed of tracing.</summary>
    private const int LongRun = 4096;

    /// <summary>Puts the items of the left side first; both sides hold at least one.</summary>
    [SkipLocalsInit]
    public static (BoxRange Left, BoxRange Right) Split(BoxItem* items, in BoxRange range)
    {
        var extent = range.MiddleHigh - range.MiddleLow;
        var longest = extent.GetElement(0) >= extent.GetElement(1)
            ? extent.GetElement(0) >= extent.GetElement(2) ? 0 : 2
            : extent.GetElement(1) >= extent.GetElement(2) ? 1 : 2;
        if (!(extent.GetElement(longest) > 0))
        {
            return Halve(items, range);
        }

        // Bins along each axis; an axis without extent puts everything into bin 0 and offers no cut.
        var scale = Vector128.ConditionalSelect(
            Vector128.GreaterThan(extent, Vector128<float>.Zero), Vector128.Create(Bins * 0.99999f) / extent, Vector128<float>.Zero);
        BoxRange* bins = stackalloc BoxRange[3 * Bins];
        int from = 0, to = 3;
        if (range.Count > LongRun)
        {
            (from, to) = (longest, longest + 1);
        }

        for (var i = from * Bins; i < to * Bins; i++)
        {
            bins[i] = BoxRange.Nothing(0);
        }

        Fill(items, range, scale, bins, from, to);
        var (axis, cut) = BestCut(bins, from, to);
        return axis < 0 ? Halve(items, range) : Partition(items, range, scale, axis, cut);
    }

    private static void Fill(BoxItem* items, in BoxRange range, Vector128<float> scale, BoxRange* bins, int from, int to)
    {
        var end = items + range.First + range.Count;
        var low = range.MiddleLow;
        for (var item = items + range.First; item < end; item++)
        {
            var place = Vector128.ConvertToInt32Native((item->Middle - low) * scale);
            for (var axis = from; axis < to; axis++)
            {
                var bin = bins + axis * Bins + Math.Clamp(place.GetElement(axis), 0, Bins - 1);
                bin->Count++;
                bin->Low = Vector128.MinNative(bin->Low, item->Low);
                bin->High = Vector128.MaxNative(bin->High, item->High);
            }
        }
    }

    private static (int Axis, int Cut) BestCut(BoxRange* bins, int from, int to)
    {
        var right = stackalloc float[Bins];
        var best = (Axis: -1, Cut: 0);
        var least = float.MaxValue;
        for (var axis = from; axis < to; axis++)
        {
            var row = bins + axis * Bins;
            var sum = BoxRange.Nothing(0);
            for (var b = Bins - 1; b > 0; b--)
            {
                sum.Join(row[b]);
                right[b] = sum.Count == 0 ? float.MaxValue : sum.Surface * Blocks(sum.Count);
            }

            sum = BoxRange.Nothing(0);
            for (var b = 0; b < Bins - 1; b++)
            {
                sum.Join(row[b]);
                var cost = sum.Count == 0 ? float.MaxValue : sum.Surface * Blocks(sum.Count) + right[b + 1];
                if (cost < least)
                {
                    least = cost;
                    best = (axis, b);
                }
            }
        }

        return best;
    }

    private static float Blocks(int count) => (count + 3) >> 2;

    private static (BoxRange Left, BoxRange Right) Partition(BoxItem* items, in BoxRange range, Vector128<float> scale, int axis, int cut)
    {
        BoxRange left = BoxRange.Nothing(range.First), right = BoxRange.Nothing(0);
        BoxItem* i = items + range.First, j = i + range.Count - 1;
        float low = range.MiddleLow.GetElement(axis), stretch = scale.GetElement(axis);
        while (i <= j)
        {
            if (IsLeft(i, axis, low, stretch, cut))
            {
                left.Take(*i);
                i++;
            }
            else if (!IsLeft(j, axis, low, stretch, cut))
            {
                right.Take(*j);
                j--;
            }
            else
            {
                (*i, *j) = (*j, *i);
                left.Take(*i);
                right.Take(*j);
                i++;
                j--;
            }
        }

        right.First = range.First + left.Count;
        return left.Count == 0 || right.Count == 0 ? Halve(items, range) : (left, right);
    }

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    private static bool IsLeft(BoxItem* item, int axis, float low, float stretch, int cut)
    {
        var middle = ((float*)&item->Low)[axis] + ((float*)&item->High)[axis];
        return (int)((middle - low) * stretch) <= cut;
    }

    /// <summary>In the order in which they lie: for boxes with one common middle.</summary>
    public static (BoxRange Left, BoxRange Right) Halve(BoxItem* items, in BoxRange range)
    {
        BoxRange left = BoxRange.Nothing(range.First), right = BoxRange.Nothing(range.First + range.Count / 2);
        for (var i = range.First; i < range.First + range.Count; i++)
        {
            if (i < right.First)
            {
                left.Take(items[i]);
            }
            else
            {
                right.Take(items[i]);
            }
        }

        return (left, right);
    }
}
