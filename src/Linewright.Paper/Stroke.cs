using System.Collections.Immutable;

namespace Linewright.Paper;

/// <summary>A line through points, drawn with a pen.</summary>
/// <param name="Points">Two at least.</param>
/// <param name="Pen">What draws it.</param>
/// <param name="IsClosed">Whether it runs on from the last point to the first.</param>
public sealed record Stroke(ImmutableArray<PaperPoint> Points, Pen Pen, bool IsClosed = false) : Mark
{
    /// <summary>A straight line.</summary>
    public Stroke(PaperPoint from, PaperPoint to, Pen pen)
        : this([from, to], pen)
    {
    }

    /// <inheritdoc/>
    public override PaperBox Box => PaperBox.Around(Points);

    /// <summary>A rectangle.</summary>
    public static Stroke Rectangle(PaperBox box, Pen pen)
        => new([new(box.Left, box.Top), new(box.Right, box.Top), new(box.Right, box.Bottom), new(box.Left, box.Bottom)], pen, true);

    /// <summary>A circle, as a polygon within a hundredth of a millimetre.</summary>
    public static Stroke Circle(PaperPoint centre, double radiusMm, Pen pen)
    {
        // A chord leaves its circle by r (1 - cos (pi / n)).
        const double within = 0.01;
        var sides = Math.Max(24, (int)Math.Ceiling(Math.PI / Math.Acos(1 - Math.Min(0.5, within / radiusMm))));
        return new Stroke(
            [.. Enumerable.Range(0, sides).Select(i => new PaperPoint(
                centre.X + radiusMm * Math.Cos(2 * Math.PI * i / sides), centre.Y + radiusMm * Math.Sin(2 * Math.PI * i / sides)))],
            pen,
            true);
    }

    /// <inheritdoc/>
    public override Mark Moved(PaperPoint step) => this with { Points = [.. Points.Select(p => p + step)] };
}
