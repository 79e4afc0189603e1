using Linewright.Solids.Space;

namespace Linewright.Pictures.Rays;

/// <summary>A point or direction in single precision, mm: what rays are traced in.</summary>
internal struct Float3(float x, float y, float z)
{
    public float X = x;
    public float Y = y;
    public float Z = z;

    public Float3(Vec3 v)
        : this((float)v.X, (float)v.Y, (float)v.Z)
    {
    }

    public static Float3 operator +(Float3 a, Float3 b) => new(a.X + b.X, a.Y + b.Y, a.Z + b.Z);

    public static Float3 operator -(Float3 a, Float3 b) => new(a.X - b.X, a.Y - b.Y, a.Z - b.Z);

    public static Float3 operator *(Float3 a, float s) => new(a.X * s, a.Y * s, a.Z * s);

    public static float Dot(Float3 a, Float3 b) => a.X * b.X + a.Y * b.Y + a.Z * b.Z;

    public static Float3 Cross(Float3 a, Float3 b) => new(a.Y * b.Z - a.Z * b.Y, a.Z * b.X - a.X * b.Z, a.X * b.Y - a.Y * b.X);

    public static Float3 Normalise(Float3 a) => a * (1f / MathF.Sqrt(Dot(a, a)));

    /// <summary>Two directions that make a right-handed frame with a unit one. Source: Duff et al. (2017), JCGT 6(1).</summary>
    public static void Frame(Float3 n, out Float3 u, out Float3 v)
    {
        var sign = n.Z >= 0 ? 1f : -1f;
        var a = -1f / (sign + n.Z);
        var b = n.X * n.Y * a;
        u = new Float3(1 + sign * n.X * n.X * a, sign * b, -sign * n.X);
        v = new Float3(b, sign + n.Y * n.Y * a, -n.Y);
    }
}
