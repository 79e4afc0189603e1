using Linewright.Solids.Space;

namespace Linewright.Layout;

/// <summary>The cross-section of a wrist: a superellipse |x / a|^n + |z / b|^n = 1, mm, breadth along x and depth along z.</summary>
/// <param name="HalfBreadthMm">a, above 0.</param>
/// <param name="DepthRatio">b / a, 0.3 to 1.</param>
/// <param name="Exponent">n, 2 (an ellipse) to 5 (nearly a box with round corners).</param>
/// <remarks>
/// Default ratio and exponent: hand surveys put thickness over breadth at 0.67 to 0.72 bare, from memory;
/// 0.75 and 2.3 are common practice for a wrist with its soft parts, 0.65 to 0.85 the usual range.
/// </remarks>
public sealed record WristForm(double HalfBreadthMm, double DepthRatio = WristForm.UsualDepthRatio, double Exponent = WristForm.UsualExponent)
{
    /// <summary>Depth over breadth unless the brief says otherwise.</summary>
    public const double UsualDepthRatio = 0.75;

    /// <summary>Exponent unless the brief says otherwise.</summary>
    public const double UsualExponent = 2.3;

    // Relative; quadrature stops here, four digits finer than any use of it.
    private const double PerimeterTolerance = 1e-13;

    /// <summary>Half the depth, mm.</summary>
    public double HalfDepthMm => HalfBreadthMm * DepthRatio;

    /// <summary>Length once round, mm, to 1e-11 of itself.</summary>
    public double PerimeterMm => 4 * Quadrature.Integrate(Speed, 0, Math.PI / 2, PerimeterTolerance * HalfBreadthMm);

    /// <summary>The form of a given circumference.</summary>
    /// <param name="circumference">Once round, mm.</param>
    /// <param name="depthRatio">b / a, 0.3 to 1.</param>
    /// <param name="exponent">n, 2 to 5.</param>
    /// <exception cref="ArgumentOutOfRangeException">A value lies outside its range.</exception>
    public static WristForm OfCircumference(double circumference, double depthRatio = UsualDepthRatio, double exponent = UsualExponent)
    {
        var unit = new WristForm(1, depthRatio, exponent).Checked();
        return unit with { HalfBreadthMm = Guard.Positive(circumference) / unit.PerimeterMm };
    }

    /// <summary>The point at an angle from +x towards +z, y = 0.</summary>
    public Vec3 Point(double angle)
    {
        var (sin, cos) = Math.SinCos(angle);
        var radius = Radius(sin, cos);
        return new Vec3(radius * cos, 0, radius * sin);
    }

    /// <summary>The outward direction, of length 1, at the point with that angle.</summary>
    public Vec3 Normal(double angle)
    {
        var (sin, cos) = Math.SinCos(angle);
        double power = Exponent - 1;
        return new Vec3(
            Math.CopySign(Math.Pow(Math.Abs(cos), power), cos),
            0,
            Math.CopySign(Math.Pow(Math.Abs(sin), power) / Math.Pow(DepthRatio, Exponent), sin)).Normalised();
    }

    /// <summary>How far the form reaches in a direction in its plane, mm.</summary>
    public double Support(Vec3 direction)
    {
        // Source: the dual norm, Hoelder (1889): 1 / n + 1 / q = 1.
        var dual = Exponent / (Exponent - 1);
        return HalfBreadthMm * Math.Pow(Math.Pow(Math.Abs(direction.X), dual) + Math.Pow(Math.Abs(DepthRatio * direction.Z), dual), 1 / dual);
    }

    /// <summary>Refuses forms outside the stated ranges.</summary>
    internal WristForm Checked()
    {
        Guard.Positive(HalfBreadthMm, nameof(HalfBreadthMm));
        Guard.InRange(DepthRatio, 0.3, 1, nameof(DepthRatio));
        Guard.InRange(Exponent, 2, 5, nameof(Exponent));
        return this;
    }

    private double Radius(double sin, double cos)
        => HalfBreadthMm / Math.Pow(Math.Pow(Math.Abs(cos), Exponent) + Math.Pow(Math.Abs(sin) / DepthRatio, Exponent), 1 / Exponent);

    private double Speed(double angle)
    {
        // In polar form the arc grows by the radius over the cosine between ray and normal.
        var (sin, cos) = Math.SinCos(angle);
        var normal = Normal(angle);
        return Radius(sin, cos) / (normal.X * cos + normal.Z * sin);
    }
}
