namespace Linewright.Pictures.Transport;

/// <summary>A quantity at the four wavelengths that one path carries; the first is the hero, which chooses the way.</summary>
/// <remarks>Source: Wilkie et al. (2014), Hero wavelength spectral sampling.</remarks>
internal struct Four(float a, float b, float c, float d)
{
    public float A = a;
    public float B = b;
    public float C = c;
    public float D = d;

    public Four(float all)
        : this(all, all, all, all)
    {
    }

    public readonly float Largest => MathF.Max(MathF.Max(A, B), MathF.Max(C, D));

    public static Four operator +(Four x, Four y) => new(x.A + y.A, x.B + y.B, x.C + y.C, x.D + y.D);

    public static Four operator *(Four x, Four y) => new(x.A * y.A, x.B * y.B, x.C * y.C, x.D * y.D);

    public static Four operator *(Four x, float s) => new(x.A * s, x.B * s, x.C * s, x.D * s);

    public static Four Least(Four x, float s) => new(MathF.Min(x.A, s), MathF.Min(x.B, s), MathF.Min(x.C, s), MathF.Min(x.D, s));
}
