namespace Linewright.Paper;

/// <summary>A place on a page, or a step on it: mm from the upper left corner, x to the right, y down, as one reads.</summary>
public readonly record struct PaperPoint(double X, double Y)
{
    /// <summary>Distance from the corner, or length of the step, mm.</summary>
    public double Length => double.Hypot(X, Y);

    public static PaperPoint operator +(PaperPoint a, PaperPoint b) => new(a.X + b.X, a.Y + b.Y);

    public static PaperPoint operator -(PaperPoint a, PaperPoint b) => new(a.X - b.X, a.Y - b.Y);

    public static PaperPoint operator *(PaperPoint a, double share) => new(a.X * share, a.Y * share);
}
