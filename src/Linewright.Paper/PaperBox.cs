namespace Linewright.Paper;

/// <summary>An upright rectangle on a page, mm; empty where its left lies beyond its right.</summary>
public readonly record struct PaperBox(double Left, double Top, double Right, double Bottom)
{
    /// <summary>The box that holds nothing; joining it changes nothing.</summary>
    public static PaperBox Empty { get; } = new(double.PositiveInfinity, double.PositiveInfinity, double.NegativeInfinity, double.NegativeInfinity);

    /// <summary>Left to right, mm.</summary>
    public double Width => Right - Left;

    /// <summary>Top to bottom, mm.</summary>
    public double Height => Bottom - Top;

    /// <summary>The middle.</summary>
    public PaperPoint Centre => new((Left + Right) / 2, (Top + Bottom) / 2);

    /// <summary>The smallest box round some points.</summary>
    public static PaperBox Around(IEnumerable<PaperPoint> points)
    {
        ArgumentNullException.ThrowIfNull(points);
        return points.Aggregate(Empty, (box, p) => box.Join(new PaperBox(p.X, p.Y, p.X, p.Y)));
    }

    /// <summary>The smallest box that holds both.</summary>
    public PaperBox Join(PaperBox other)
        => new(Math.Min(Left, other.Left), Math.Min(Top, other.Top), Math.Max(Right, other.Right), Math.Max(Bottom, other.Bottom));

    /// <summary>The box grown by a margin on every side, mm.</summary>
    public PaperBox Grown(double margin) => new(Left - margin, Top - margin, Right + margin, Bottom + margin);

    /// <summary>The box moved by a step.</summary>
    public PaperBox Moved(PaperPoint step) => new(Left + step.X, Top + step.Y, Right + step.X, Bottom + step.Y);

    /// <summary>True where the two share more than an edge.</summary>
    public bool Overlaps(PaperBox other) => Left < other.Right && other.Left < Right && Top < other.Bottom && other.Top < Bottom;

    /// <summary>True where the other lies within this one, edges included.</summary>
    public bool Contains(PaperBox other) => other.Left >= Left && other.Top >= Top && other.Right <= Right && other.Bottom <= Bottom;
}
