using Linewright.Solids.Space;

namespace Linewright.Solids.Shapes;

/// <summary>The primitives, each in its own frame about the origin; place them with <see cref="Solid.Moved(Pose)"/>.</summary>
/// <remarks>All lengths in mm, angles in radians. Every distance is exact but where a member says otherwise.</remarks>
public static class Shape
{
    /// <summary>A ball.</summary>
    public static Solid Ball(double radius) => new Leaf<Ball>(new Ball(Guard.Positive(radius)));

    /// <summary>Everything below z = 0.</summary>
    public static Solid HalfSpace() => new Leaf<HalfSpace>(default);

    /// <summary>Everything on the inner side of a plane.</summary>
    public static Solid HalfSpace(Vec3 point, Vec3 outward) => HalfSpace().Moved(Frame(outward) with { Origin = point });

    /// <summary>Round wire from one point to another with ball ends.</summary>
    public static Solid Capsule(Vec3 from, Vec3 to, double radius) => TaperedCapsule(from, radius, to, radius);

    /// <summary>All balls between two balls. Where one ball holds the other, that ball.</summary>
    public static Solid TaperedCapsule(Vec3 from, double fromRadius, Vec3 to, double toRadius)
    {
        Guard.Positive(fromRadius);
        Guard.Positive(toRadius);
        var along = to - from;
        if (along.Length <= Math.Abs(fromRadius - toRadius) + 1e-9)
        {
            return fromRadius >= toRadius
                ? Ball(fromRadius).Moved(Pose.Move(from))
                : Ball(toRadius).Moved(Pose.Move(to));
        }

        var cone = new Leaf<RoundCone>(new RoundCone(fromRadius, toRadius, along.Length));
        return cone.Moved(Frame(along) with { Origin = from });
    }

    /// <summary>A ring of round wire about z.</summary>
    public static Solid Torus(double ringRadius, double wireRadius)
        => new Leaf<Torus>(new Torus(Guard.Positive(ringRadius), Guard.Positive(wireRadius)));

    /// <summary>A bent round wire about z with ball ends, symmetric about x.</summary>
    public static Solid TorusArc(double ringRadius, double wireRadius, double halfAngle)
        => new Leaf<TorusArc>(new TorusArc(Guard.Positive(ringRadius), Guard.Positive(wireRadius), Guard.InRange(halfAngle, 0, Math.PI)));

    /// <summary>A box, edges rounded.</summary>
    public static Solid Box(double sizeX, double sizeY, double sizeZ, double edge = 0)
    {
        var least = Math.Min(sizeX, Math.Min(sizeY, sizeZ)) / 2;
        return new Leaf<RoundedBox>(new RoundedBox(
            Guard.Positive(sizeX) / 2, Guard.Positive(sizeY) / 2, Guard.Positive(sizeZ) / 2, Guard.InRange(edge, 0, least)));
    }

    /// <summary>The box between two corners, edges rounded.</summary>
    public static Solid BoxBetween(Vec3 low, Vec3 high, double edge = 0)
    {
        var size = high - low;
        return Box(size.X, size.Y, size.Z, edge).Moved(Pose.Move((low + high) * 0.5));
    }

    /// <summary>A cylinder about z, its two rims rounded.</summary>
    public static Solid Cylinder(double radius, double height, double edge = 0)
        => new Leaf<Extrusion<CircleOutline>>(new Extrusion<CircleOutline>(
            new CircleOutline(Guard.Positive(radius)), Guard.Positive(height) / 2, Guard.InRange(edge, 0, Math.Min(radius, height / 2))));

    /// <summary>A cylinder from one point to another, its two rims rounded.</summary>
    public static Solid Rod(Vec3 from, Vec3 to, double radius, double edge = 0)
        => Cylinder(radius, (to - from).Length, edge).Moved(Frame(to - from) with { Origin = (from + to) * 0.5 });

    /// <summary>A cone or frustum about z from z = 0 to its height; a radius may be 0.</summary>
    public static Solid Cone(double footRadius, double tipRadius, double height)
    {
        Guard.InRange(footRadius, 0, 1e4);
        Guard.InRange(tipRadius, 0, 1e4);
        Guard.Positive(Math.Max(footRadius, tipRadius));
        Guard.Positive(height);

        // The outline is doubled over the axis, so that the axis itself is no surface.
        return footRadius > 0 && tipRadius > 0
            ? Revolved([(-footRadius, 0), (footRadius, 0), (tipRadius, height), (-tipRadius, height)])
            : footRadius > 0
                ? Revolved([(-footRadius, 0), (footRadius, 0), (0, height)])
                : Revolved([(0, 0), (tipRadius, height), (-tipRadius, height)]);
    }

    /// <summary>A ring of rectangular section about z, from inner to outer radius, edges rounded.</summary>
    public static Solid Ring(double innerRadius, double outerRadius, double height, double edge = 0)
    {
        var half = Guard.Positive(outerRadius - innerRadius) / 2;
        var outline = new RectangleOutline(
            (innerRadius + outerRadius) / 2, 0, half, Guard.Positive(height) / 2, Guard.InRange(edge, 0, Math.Min(half, height / 2)));
        return new Leaf<Revolution<RectangleOutline>>(new Revolution<RectangleOutline>(outline));
    }

    /// <summary>A plate: rectangle with rounded corners in x-y, extruded along z, its rims rounded.</summary>
    public static Solid Plate(double sizeX, double sizeY, double height, double corner, double edge = 0)
    {
        var outline = new RectangleOutline(
            0, 0, Guard.Positive(sizeX) / 2, Guard.Positive(sizeY) / 2, Guard.InRange(corner, 0, Math.Min(sizeX, sizeY) / 2));
        return new Leaf<Extrusion<RectangleOutline>>(new Extrusion<RectangleOutline>(
            outline, Guard.Positive(height) / 2, Guard.InRange(edge, 0, Math.Min(height, Math.Min(sizeX, sizeY)) / 2)));
    }

    /// <summary>A polygon in x-y (counter-clockwise), corners rounded outwards, extruded along z, its rims rounded.</summary>
    public static Solid Extruded(ReadOnlySpan<(double X, double Y)> corners, double height, double round = 0, double edge = 0)
        => new Leaf<Extrusion<PolygonOutline>>(new Extrusion<PolygonOutline>(
            new PolygonOutline(corners, Guard.InRange(round, 0, 1e3)), Guard.Positive(height) / 2, Guard.InRange(edge, 0, height / 2)));

    /// <summary>A polygon of (distance from the axis, height) pairs, counter-clockwise, corners rounded outwards, turned about z.</summary>
    public static Solid Revolved(ReadOnlySpan<(double Radius, double Height)> corners, double round = 0)
        => new Leaf<Revolution<PolygonOutline>>(new Revolution<PolygonOutline>(
            new PolygonOutline(corners, Guard.InRange(round, 0, 1e3))));

    /// <summary>
    /// A convex body given by its facets: unit outward normals and offsets, inside where normal . p is at most the
    /// offset. The distance outside an edge is understated.
    /// </summary>
    public static Solid Faceted(ReadOnlySpan<(Vec3 Normal, double Offset)> planes, Bounds bounds) => Shapes.Faceted.Of(planes, bounds);

    /// <summary>A frame whose z axis points the way given; turned the shortest way from upright.</summary>
    private static Pose Frame(Vec3 up)
    {
        var z = up.Normalised();
        if (z == Vec3.UnitZ)
        {
            return Pose.Identity;
        }

        var axis = Vec3.UnitZ.Cross(z);
        return axis.Length < 1e-12
            ? Pose.Turn(Vec3.UnitX, Math.PI)
            : Pose.Turn(axis, Math.Atan2(axis.Length, z.Z));
    }
}
