namespace Linewright.Solids.Space;

/// <summary>An axis-aligned box, in mm. Empty when a low coordinate exceeds its high one.</summary>
public readonly record struct Bounds(Vec3 Low, Vec3 High)
{
    /// <summary>The box that contains nothing; the neutral element of <see cref="Join"/>.</summary>
    public static Bounds Empty { get; } = new(
        new Vec3(double.PositiveInfinity, double.PositiveInfinity, double.PositiveInfinity),
        new Vec3(double.NegativeInfinity, double.NegativeInfinity, double.NegativeInfinity));

    /// <summary>All of space: what a half-space or a complement reaches.</summary>
    public static Bounds Everything { get; } = new(
        new Vec3(double.NegativeInfinity, double.NegativeInfinity, double.NegativeInfinity),
        new Vec3(double.PositiveInfinity, double.PositiveInfinity, double.PositiveInfinity));

    /// <summary>Edge lengths in mm.</summary>
    public Vec3 Size => High - Low;

    /// <summary>The middle of the box.</summary>
    public Vec3 Centre => (Low + High) * 0.5;

    /// <summary>True where no point is inside.</summary>
    public bool IsEmpty => Low.X > High.X || Low.Y > High.Y || Low.Z > High.Z;

    /// <summary>True where every edge has a finite length.</summary>
    public bool IsFinite => double.IsFinite(Size.X) && double.IsFinite(Size.Y) && double.IsFinite(Size.Z);

    /// <summary>The box around a symmetric extent.</summary>
    public static Bounds Around(double halfX, double halfY, double halfZ)
        => new(new Vec3(-halfX, -halfY, -halfZ), new Vec3(halfX, halfY, halfZ));

    /// <summary>The smallest box that holds both.</summary>
    public Bounds Join(Bounds other) => new(Low.Min(other.Low), High.Max(other.High));

    /// <summary>The box that both have in common; may be empty.</summary>
    public Bounds Meet(Bounds other) => new(Low.Max(other.Low), High.Min(other.High));

    /// <summary>The box grown by a margin on every side.</summary>
    public Bounds Grown(double margin)
    {
        var by = new Vec3(margin, margin, margin);
        return new Bounds(Low - by, High + by);
    }

    /// <summary>True where the point lies inside or on the box.</summary>
    public bool Contains(Vec3 p)
        => p.X >= Low.X && p.Y >= Low.Y && p.Z >= Low.Z && p.X <= High.X && p.Y <= High.Y && p.Z <= High.Z;
}
