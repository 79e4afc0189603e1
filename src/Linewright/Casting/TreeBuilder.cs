using System.Collections.Immutable;
using Linewright.Solids.Space;

namespace Linewright.Casting;

/// <summary>Hangs sprued parts about stems, ring over ring, so that the boxes about them keep a gap.</summary>
/// <remarks>
/// Sprues rise from the stem at half a right angle, away from the button. A ring has as many parts as the gap allows; the next is turned
/// by half a step and raised until it clears all that hangs already. A box about a part is larger than the part, so the true gaps
/// are wider. Sprues may come as near to each other as the stem brings them, but not into each other.
/// </remarks>
internal sealed class TreeBuilder(ImmutableArray<SpruedPart> parts, double stemMm, double gapMm)
{
    // How the sprues rise. Common practice: 45 to 60 degrees.
    private const double Rise = Math.PI / 4;

    // More parts than this on a ring leave no stem between the sprues. Assumed.
    private const int MostInRing = 24;

    // Rings are raised by so much at a time; the first stands so far over the button's round; the stem ends so far over the last feet.
    private const double RaiseMm = 0.25, OverButtonMm = 3, OverLastMm = 3, HighestMm = 2000;

    private readonly List<(int Part, Pose Pose)> places = [];
    private readonly List<HungBoxes> boxes = [];
    private readonly List<TreeRing> rings = [];
    private readonly double button = Modulus.HalfBallForMm(Modulus.FeedRatio * Modulus.OfBar(stemMm));
    private double height;

    /// <summary>The trees for all parts that have a sprue.</summary>
    /// <param name="parts">The sprued parts.</param>
    /// <param name="mostOnOne">Most parts on one tree.</param>
    /// <param name="stemMm">Diameter of the stems.</param>
    /// <param name="gapMm">Least gap between two parts.</param>
    public static ImmutableArray<CastingTree> Of(ImmutableArray<SpruedPart> parts, int mostOnOne, double stemMm, double gapMm)
    {
        // In the order of the line: links by their number, the clasp's parts last.
        var queue = new Queue<int>(parts.SelectMany((part, index) => part.Site is null ? [] : Enumerable.Repeat(index, part.Part.Count)));
        var trees = ImmutableArray.CreateBuilder<CastingTree>();
        while (queue.Count > 0)
        {
            var tree = new TreeBuilder(parts, stemMm, gapMm);
            tree.Fill([.. Enumerable.Range(0, Math.Min(mostOnOne, queue.Count)).Select(_ => queue.Dequeue())]);
            trees.Add(tree.Finish());
        }

        return trees.ToImmutable();
    }

    private void Fill(List<int> hangs)
    {
        height = button + OverButtonMm;
        foreach (var group in hangs.GroupBy(part => parts[part].Part.Count > 1 ? part : -1))
        {
            var left = new Queue<int>(group);
            while (left.Count > 0)
            {
                var ring = Widest([.. left]);
                Hang([.. Enumerable.Range(0, ring).Select(_ => left.Dequeue())]);
            }
        }
    }

    /// <summary>How many of the next parts fit in one ring, evenly spaced.</summary>
    private int Widest(List<int> next)
    {
        var most = Math.Min(MostInRing, next.Count);
        for (var count = most; count > 1; count--)
        {
            // All on a full ring, so that a last ring with few parts stays even.
            var ring = Boxes(next[..count], 0, 0, 2 * Math.PI / count);
            if (KeepApart(ring, gapMm))
            {
                return count;
            }
        }

        return 1;
    }

    private void Hang(List<int> ring)
    {
        var step = 2 * Math.PI / ring.Count;
        var first = rings.Count % 2 == 0 ? 0 : step / 2;
        while (height < HighestMm)
        {
            var hung = Boxes(ring, height, first, step);
            if (hung.TrueForAll(box => box.LowestZ > button && boxes.TrueForAll(other => box.Clears(other, gapMm))))
            {
                break;
            }

            height += RaiseMm;
        }

        for (var i = 0; i < ring.Count; i++)
        {
            var pose = PoseAt(ring[i], height, first + i * step);
            places.Add((ring[i], pose));
            boxes.Add(new HungBoxes(parts[ring[i]], pose));
        }

        rings.Add(new TreeRing(
            string.Join(", ", ring.Select(part => parts[part].Part.Name).Distinct(StringComparer.Ordinal)),
            ring.Count, height, double.RadiansToDegrees(first), double.RadiansToDegrees(step)));
    }

    private static bool KeepApart(List<HungBoxes> ring, double gapMm)
    {
        for (var i = 0; i < ring.Count; i++)
        {
            for (var j = i + 1; j < ring.Count; j++)
            {
                if (!ring[i].Clears(ring[j], gapMm))
                {
                    return false;
                }
            }
        }

        return true;
    }

    private List<HungBoxes> Boxes(List<int> ring, double at, double first, double step)
        => [.. ring.Select((part, i) => new HungBoxes(parts[part], PoseAt(part, at, first + i * step)))];

    /// <summary>Foot on the stem's surface, sprue rising outwards; the narrower side of the part lies along the ring.</summary>
    private Pose PoseAt(int part, double at, double angle)
    {
        var size = parts[part].UprightBox.Size;
        var narrow = size.X <= size.Y ? Pose.Turn(Vec3.UnitZ, Math.PI / 2) : Pose.Identity;

        // From upright the part leans over to the ring's direction, its y across the lean and so along the ring.
        var lean = Pose.Turn(Vec3.UnitY, Math.PI / 2 - Rise);
        var out_ = Pose.Move(stemMm / 2, 0, at);
        return narrow.Then(lean).Then(out_).Then(Pose.Turn(Vec3.UnitZ, angle));
    }

    private CastingTree Finish()
    {
        var last = rings[^1].HeightMm;
        return new CastingTree
        {
            Rings = [.. rings],
            Places = [.. places],
            StemMm = stemMm,
            StemLengthMm = last + OverLastMm - button,
            ButtonMm = button,
            HeightMm = Math.Max(last + OverLastMm, boxes.Max(box => box.HighestZ)),
            WidthMm = 2 * Math.Max(button, boxes.Max(box => box.FurthestFromAxis)),
        };
    }
}
