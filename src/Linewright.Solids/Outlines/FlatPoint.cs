namespace Linewright.Solids.Outlines;

/// <summary>A point in the plane of a view, mm: x to the right of whoever looks, y up.</summary>
public readonly record struct FlatPoint(double X, double Y)
{
    /// <summary>Distance from the view's origin, mm.</summary>
    public double Length => Math.Sqrt(X * X + Y * Y);

    public static FlatPoint operator +(FlatPoint a, FlatPoint b) => new(a.X + b.X, a.Y + b.Y);

    public static FlatPoint operator -(FlatPoint a, FlatPoint b) => new(a.X - b.X, a.Y - b.Y);

    public static FlatPoint operator *(FlatPoint a, double share) => new(a.X * share, a.Y * share);

    /// <summary>Inner product.</summary>
    public double Dot(FlatPoint b) => X * b.X + Y * b.Y;

    /// <summary>The part of the outer product that stands on the plane: above zero where <paramref name="b"/> lies to the left.</summary>
    public double Cross(FlatPoint b) => X * b.Y - Y * b.X;
}
