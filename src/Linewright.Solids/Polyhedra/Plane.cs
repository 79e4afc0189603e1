using Linewright.Solids.Space;

namespace Linewright.Solids.Polyhedra;

/// <summary>A half-space: all points p with Normal · p at most Offset. Offset in mm, the normal points out and has length 1.</summary>
/// <remarks>The constructor takes what it is given; <see cref="Through(Vec3, Vec3)"/> and <see cref="Sloped"/> bring the normal to length 1.</remarks>
public readonly record struct Plane(Vec3 Normal, double Offset)
{
    /// <summary>The half-space whose boundary passes through a point, with an outward direction of any length.</summary>
    /// <exception cref="ArgumentOutOfRangeException">The direction has no length.</exception>
    public static Plane Through(Vec3 point, Vec3 outward)
    {
        Guard.Positive(outward.Length, nameof(outward));
        var normal = outward.Normalised();
        return new Plane(normal, normal.Dot(point));
    }

    /// <summary>The half-space through three points that stand counter-clockwise seen from outside.</summary>
    /// <exception cref="ArgumentOutOfRangeException">The points lie on one line.</exception>
    public static Plane Through(Vec3 a, Vec3 b, Vec3 c) => Through(a, (b - a).Cross(c - a));

    /// <summary>The half-space below (or above, see <paramref name="down"/>) a slope, in radians from the horizontal, that falls towards an azimuth.</summary>
    /// <param name="azimuth">Direction of the outward normal seen from above, radians from x towards y.</param>
    /// <param name="slope">Angle between the plane and the horizontal, 0 to pi / 2 radians.</param>
    /// <param name="point">A point on the plane, mm.</param>
    /// <param name="down">True where the normal points down, as on a pavilion.</param>
    public static Plane Sloped(double azimuth, double slope, Vec3 point, bool down = false)
    {
        Guard.InRange(slope, 0, Math.PI / 2);
        double across = Math.Sin(slope), up = Math.Cos(slope);
        return Through(point, new Vec3(across * Math.Cos(azimuth), across * Math.Sin(azimuth), down ? -up : up));
    }

    /// <summary>Distance from the boundary in mm, negative inside.</summary>
    public double Distance(Vec3 p) => Normal.Dot(p) - Offset;

    /// <summary>The half-space placed elsewhere; mirrored poses do as well.</summary>
    public Plane Moved(Pose pose)
    {
        var normal = pose.Direction(Normal);
        return new Plane(normal, Offset + normal.Dot(pose.Origin));
    }

    /// <summary>The half-space scaled about the origin.</summary>
    public Plane Scaled(double factor) => this with { Offset = Offset * Guard.Positive(factor) };
}
