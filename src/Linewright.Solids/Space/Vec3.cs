namespace Linewright.Solids.Space;

/// <summary>A point or a direction in space, in millimetres.</summary>
public readonly record struct Vec3(double X, double Y, double Z)
{
    /// <summary>The origin.</summary>
    public static Vec3 Zero => default;

    /// <summary>The unit direction along the line, from bar to eye.</summary>
    public static Vec3 UnitX => new(1, 0, 0);

    /// <summary>The unit direction across.</summary>
    public static Vec3 UnitY => new(0, 1, 0);

    /// <summary>The unit direction up.</summary>
    public static Vec3 UnitZ => new(0, 0, 1);

    /// <summary>Length in mm.</summary>
    public double Length => Math.Sqrt(Dot(this));

    public static Vec3 operator +(Vec3 a, Vec3 b) => new(a.X + b.X, a.Y + b.Y, a.Z + b.Z);

    public static Vec3 operator -(Vec3 a, Vec3 b) => new(a.X - b.X, a.Y - b.Y, a.Z - b.Z);

    public static Vec3 operator -(Vec3 a) => new(-a.X, -a.Y, -a.Z);

    public static Vec3 operator *(Vec3 a, double s) => new(a.X * s, a.Y * s, a.Z * s);

    public static Vec3 operator *(double s, Vec3 a) => a * s;

    public static Vec3 operator /(Vec3 a, double s) => a * (1 / s);

    /// <summary>Inner product.</summary>
    public double Dot(Vec3 b) => X * b.X + Y * b.Y + Z * b.Z;

    /// <summary>Outer product, right-handed.</summary>
    public Vec3 Cross(Vec3 b) => new(Y * b.Z - Z * b.Y, Z * b.X - X * b.Z, X * b.Y - Y * b.X);

    /// <summary>The same direction with length 1; a zero vector stays zero.</summary>
    public Vec3 Normalised()
    {
        var length = Length;
        return length > 0 ? this / length : this;
    }

    /// <summary>The smaller of each coordinate.</summary>
    public Vec3 Min(Vec3 b) => new(Math.Min(X, b.X), Math.Min(Y, b.Y), Math.Min(Z, b.Z));

    /// <summary>The larger of each coordinate.</summary>
    public Vec3 Max(Vec3 b) => new(Math.Max(X, b.X), Math.Max(Y, b.Y), Math.Max(Z, b.Z));
}
