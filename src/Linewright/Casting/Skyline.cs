using Linewright.Solids.Space;

namespace Linewright.Casting;

/// <summary>Packs rectangles onto a plate from the front upwards, each where it lies lowest, then furthest to the left.</summary>
/// <remarks>
/// What is taken is kept as a skyline: how deep the plate is filled along its width. Room behind the line is lost, which for
/// parts of a few sizes, largest first, costs little. Source: Baker, Coffman and Rivest (1980), SIAM J. Comput. 9, 846, bottom-left packing.
/// Rectangles are placed a gap apart; none reaches over the plate's edge.
/// </remarks>
internal sealed class Skyline
{
    // Steps that rounding makes in the skyline are none.
    private const double Hair = 1e-9;

    private readonly double width, depth, gap;
    private readonly List<(double From, double To, double Level)> line;

    /// <summary>An empty plate, mm.</summary>
    public Skyline(double width, double depth, double gap)
    {
        (this.width, this.depth, this.gap) = (Guard.Positive(width), Guard.Positive(depth), Guard.InRange(gap, 0, 100));
        line = [(0, width + gap, 0)];
    }

    /// <summary>Places a rectangle as it is or turned by a right angle; null where the plate is full for it.</summary>
    public (double X, double Y, bool IsTurned)? Place(double sizeX, double sizeY)
    {
        var (plain, turned) = (Lowest(sizeX, sizeY), Lowest(sizeY, sizeX));
        if (plain is null && turned is null)
        {
            return null;
        }

        // The orientation whose far edge is nearer; as it is where both are alike.
        var isTurned = plain is null || (turned is { } b && plain is { } a && (b.Y + sizeX, b.X).CompareTo((a.Y + sizeY - Hair, a.X)) < 0);
        var (x, y) = isTurned ? turned!.Value : plain!.Value;
        var (wide, deep) = isTurned ? (sizeY, sizeX) : (sizeX, sizeY);
        Raise(x, x + wide + gap, y + deep + gap);
        return (x, y, isTurned);
    }

    private (double X, double Y)? Lowest(double wide, double deep)
    {
        (double X, double Y)? best = null;
        foreach (var (from, _, _) in line)
        {
            if (from + wide > width + Hair)
            {
                break;
            }

            var level = line.Where(step => step.From < from + wide + gap - Hair && step.To > from + Hair).Max(step => step.Level);
            if (level + deep <= depth + Hair && (best is not { } known || level < known.Y - Hair))
            {
                best = (from, level);
            }
        }

        return best;
    }

    private void Raise(double from, double to, double level)
    {
        var raised = new List<(double From, double To, double Level)>();
        foreach (var step in line)
        {
            if (step.From < from - Hair)
            {
                raised.Add((step.From, Math.Min(step.To, from), step.Level));
            }

            if (step.To > to + Hair)
            {
                raised.Add((Math.Max(step.From, to), step.To, step.Level));
            }
        }

        raised.Add((from, Math.Min(to, width + gap), level));
        line.Clear();
        line.AddRange(raised.Where(step => step.To - step.From > Hair).OrderBy(step => step.From));
    }
}
