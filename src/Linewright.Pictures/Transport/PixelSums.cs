using Linewright.Pictures.Rays;

namespace Linewright.Pictures.Transport;

/// <summary>What a pixel has gathered so far. Samples fall into two halves in turn, so that one can judge the other.</summary>
internal struct PixelSums
{
    public Float3 Even;
    public Float3 Odd;
    public float Squares;
    public int Count;
    public float Alpha;
    public float Depth;
    public float Blur;
    public Float3 Albedo;
    public Float3 Normal;

    /// <summary>The surface that most samples saw first, if there is one that more than half of them saw.</summary>
    public int Facet;

    /// <summary>By how many samples it leads.</summary>
    public int Lead;

    public readonly Float3 Mean => (Even + Odd) * (1f / Math.Max(1, Count));

    public readonly float MeanAlpha => Alpha / Math.Max(1, Count);

    /// <summary>Weights of sRGB's primaries in luminance. Source: IEC 61966-2-1.</summary>
    public static float Luminance(Float3 c) => 0.2126f * c.X + 0.7152f * c.Y + 0.0722f * c.Z;

    /// <summary>Variance of the mean, as if the samples were independent; a safe bound for evenly spread ones.</summary>
    public readonly float Variance
    {
        get
        {
            var mean = Luminance(Mean);
            return Count < 2 ? 1e3f : MathF.Max(0, Squares / Count - mean * mean) / (Count - 1);
        }
    }

    /// <summary>Adds one sample, the one numbered <see cref="Count"/>.</summary>
    public void Add(in SampleOutcome sample)
    {
        var luminance = Luminance(sample.Colour);
        if (!float.IsFinite(luminance))
        {
            // Two roundings that cancel to nothing divided by nothing; seen once in some 10^9 samples. Counts as black.
            Count++;
            return;
        }

        if ((Count & 1) == 0)
        {
            Even += sample.Colour;
        }
        else
        {
            Odd += sample.Colour;
        }

        Squares += luminance * luminance;
        Alpha += sample.Alpha;
        Depth += sample.Depth;
        Blur += sample.Blur;
        Albedo += sample.Albedo;
        Normal += sample.Normal;
        Vote(sample.Facet, 1);
        Count++;
    }

    /// <summary>
    /// Adds what was gathered of the samples that follow this pixel's, begun with this pixel's <see cref="Count"/>: halves and
    /// guides fall as if one had gathered them all; the sums round otherwise.
    /// </summary>
    public void Join(in PixelSums later)
    {
        Even += later.Even;
        Odd += later.Odd;
        Squares += later.Squares;
        Alpha += later.Alpha;
        Depth += later.Depth;
        Blur += later.Blur;
        Albedo += later.Albedo;
        Normal += later.Normal;
        Vote(later.Facet, later.Lead);
        Count = later.Count;
    }

    /// <summary>Counts samples for one surface against those for another. Source: Boyer and Moore (1991), MJRTY, a fast majority vote algorithm.</summary>
    private void Vote(int facet, int samples)
    {
        if (facet == Facet)
        {
            Lead += samples;
            return;
        }

        Lead -= samples;
        if (Lead < 0)
        {
            (Facet, Lead) = (facet, -Lead);
        }
    }
}
