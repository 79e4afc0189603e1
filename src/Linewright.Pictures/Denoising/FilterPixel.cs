namespace Linewright.Pictures.Denoising;

/// <summary>One pixel as the filter wants it.</summary>
internal struct FilterPixel
{
    /// <summary>Red, green, blue of the first half of the samples.</summary>
    public (float Red, float Green, float Blue) First;

    /// <summary>Red, green, blue of the other half.</summary>
    public (float Red, float Green, float Blue) Second;

    /// <summary>Variance of a half's luminance.</summary>
    public float Variance;

    /// <summary>Share of light that the first surface throws back; the light on it is what is filtered.</summary>
    public (float Red, float Green, float Blue) Albedo;

    /// <summary>Mean normal, shorter than 1 where surfaces meet in the pixel.</summary>
    public (float X, float Y, float Z) Normal;

    /// <summary>How much of the pixel is covered, 0 to 1.</summary>
    public float Alpha;

    /// <summary>Number of the first surface.</summary>
    public int Facet;

    /// <summary>Whether that surface scatters light evenly, so that the light on it changes slowly.</summary>
    public bool IsMatte;

    /// <summary>Radius of the circle into which the lens spreads a point there, pixels; 0 in focus.</summary>
    public float Blur;

    /// <summary>Gathers what another pixel measured; of what kind it is stays as it was.</summary>
    public void Add(in FilterPixel other)
    {
        First = Sum(First, other.First);
        Second = Sum(Second, other.Second);
        Variance += other.Variance;
        Albedo = Sum(Albedo, other.Albedo);
        Normal = Sum(Normal, other.Normal);
        Alpha += other.Alpha;
    }

    /// <summary>Makes of gathered pixels their mean, which is less noisy than each.</summary>
    public void Share(int count)
    {
        var each = 1f / count;
        First = Times(First, each);
        Second = Times(Second, each);
        Variance *= each * each;
        Albedo = Times(Albedo, each);
        Normal = Times(Normal, each);
        Alpha *= each;
    }

    private static (float, float, float) Sum((float, float, float) a, (float, float, float) b)
        => (a.Item1 + b.Item1, a.Item2 + b.Item2, a.Item3 + b.Item3);

    private static (float, float, float) Times((float, float, float) a, float by) => (a.Item1 * by, a.Item2 * by, a.Item3 * by);
}
