namespace Linewright.Solids.Space;

/// <summary>A rigid placement: turns (or mirrors) a point about the origin, then moves it. Local to outer frame.</summary>
/// <remarks>
/// The columns are the images of the local axes. They stay orthonormal: no scale, no shear. A mirrored
/// pose has determinant -1; a mesh placed by it must turn its triangles round.
/// </remarks>
public readonly record struct Pose(Vec3 AxisX, Vec3 AxisY, Vec3 AxisZ, Vec3 Origin)
{
    /// <summary>Leaves every point where it is.</summary>
    public static Pose Identity { get; } = new(Vec3.UnitX, Vec3.UnitY, Vec3.UnitZ, Vec3.Zero);

    /// <summary>True where the placement reflects.</summary>
    public bool IsMirrored => AxisX.Cross(AxisY).Dot(AxisZ) < 0;

    /// <summary>Moves without turning.</summary>
    public static Pose Move(Vec3 by) => Identity with { Origin = by };

    /// <summary>Moves without turning.</summary>
    public static Pose Move(double x, double y, double z) => Move(new Vec3(x, y, z));

    /// <summary>Turns about an axis through the origin, right-handed, angle in radians.</summary>
    public static Pose Turn(Vec3 axis, double angle)
    {
        // Source: rotation formula of Rodrigues (1840).
        var u = axis.Normalised();
        double c = Math.Cos(angle), s = Math.Sin(angle), k = 1 - c;
        return new Pose(
            new Vec3(c + u.X * u.X * k, u.Y * u.X * k + u.Z * s, u.Z * u.X * k - u.Y * s),
            new Vec3(u.X * u.Y * k - u.Z * s, c + u.Y * u.Y * k, u.Z * u.Y * k + u.X * s),
            new Vec3(u.X * u.Z * k + u.Y * s, u.Y * u.Z * k - u.X * s, c + u.Z * u.Z * k),
            Vec3.Zero);
    }

    /// <summary>Turns about an axis through a given point.</summary>
    public static Pose TurnAbout(Vec3 point, Vec3 axis, double angle)
    {
        var turn = Turn(axis, angle);
        return turn with { Origin = point - turn.Direction(point) };
    }

    /// <summary>Reflects in the plane through the origin with the given normal.</summary>
    public static Pose Mirror(Vec3 normal)
    {
        var n = normal.Normalised();
        Vec3 Reflect(Vec3 v) => v - n * (2 * n.Dot(v));
        return new Pose(Reflect(Vec3.UnitX), Reflect(Vec3.UnitY), Reflect(Vec3.UnitZ), Vec3.Zero);
    }

    /// <summary>The image of a point.</summary>
    public Vec3 Point(Vec3 p) => Origin + Direction(p);

    /// <summary>The image of a direction.</summary>
    public Vec3 Direction(Vec3 v) => AxisX * v.X + AxisY * v.Y + AxisZ * v.Z;

    /// <summary>The placement that applies this one first, then <paramref name="outer"/>.</summary>
    public Pose Then(Pose outer) => new(
        outer.Direction(AxisX), outer.Direction(AxisY), outer.Direction(AxisZ), outer.Point(Origin));

    /// <summary>The placement that undoes this one.</summary>
    public Pose Inverse()
    {
        // The inverse of an orthonormal matrix is its transpose.
        Vec3 x = new(AxisX.X, AxisY.X, AxisZ.X), y = new(AxisX.Y, AxisY.Y, AxisZ.Y), z = new(AxisX.Z, AxisY.Z, AxisZ.Z);
        var turn = new Pose(x, y, z, Vec3.Zero);
        return turn with { Origin = -turn.Direction(Origin) };
    }

    /// <summary>The box around the image of a box.</summary>
    public Bounds Box(Bounds box)
    {
        if (box.IsEmpty || !box.IsFinite)
        {
            return box;
        }

        var result = Bounds.Empty;
        for (var corner = 0; corner < 8; corner++)
        {
            var p = Point(new Vec3(
                (corner & 1) == 0 ? box.Low.X : box.High.X,
                (corner & 2) == 0 ? box.Low.Y : box.High.Y,
                (corner & 4) == 0 ? box.Low.Z : box.High.Z));
            result = result.Join(new Bounds(p, p));
        }

        return result;
    }
}
