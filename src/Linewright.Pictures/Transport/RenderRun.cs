using Linewright.Pictures.Denoising;
using Linewright.Pictures.Images;
using Linewright.Pictures.Rays;

namespace Linewright.Pictures.Transport;

/// <summary>One picture being drawn: passes over its tiles until the noise is low enough.</summary>
/// <remarks>
/// After every pass each pixel is told how many samples it gets in the next, from its own and its neighbours' spread; that
/// decision uses whole passes only, so it does not depend on the threads.
/// </remarks>
internal sealed class RenderRun
{
    private const int TileSide = 16;

    /// <summary>Samples of the first pass. Assumed: with its neighbours a pixel then has two hundred to be judged by.</summary>
    private const int FirstPass = 8;

    /// <summary>A picture is done once less than this share of its samples, as one over, is still to come.</summary>
    private const int Remainder = 500;

    private readonly ISampler sampler;
    private readonly PictureSize size;
    private readonly RenderSettings settings;
    private readonly CancellationToken stop;
    private readonly PixelSums[] pixels;
    private readonly ushort[] wanted;
    private long samples;

    public RenderRun(ISampler sampler, PictureSize size, RenderSettings settings, CancellationToken stop)
    {
        this.sampler = sampler;
        this.size = size;
        this.settings = settings;
        this.stop = stop;
        pixels = new PixelSums[size.Count];
        wanted = new ushort[size.Count];
    }

    public Picture Draw(IProgress<PictureProgress>? progress)
    {
        wanted.AsSpan().Fill((ushort)Math.Min(FirstPass, settings.MaxSamples));
        var map = new NoiseMap(pixels, size, TileSide);
        var share = 0.0;
        for (var pass = 1; ; pass++)
        {
            samples += sampler.Pass(wanted, pixels, stop);
            var noise = map.Measure();
            var left = map.Plan(noise, settings, wanted);
            share = Math.Max(share, samples / (double)(samples + left));
            progress?.Report(new PictureProgress(share, pass, samples, noise.Overall, () => Finish(noise, false)));
            // The last passes would each add a handful of samples: less than the eye or the estimate can tell.
            if (left * Remainder <= samples)
            {
                return Finish(noise, true);
            }
        }
    }

    /// <summary>The picture as it stands, unfiltered; guides only at the end.</summary>
    private Picture Finish(NoiseEstimate noise, bool isLast)
    {
        var colour = new float[3 * size.Count];
        var alpha = new float[size.Count];
        for (var i = 0; i < size.Count; i++)
        {
            var mean = pixels[i].Mean;
            (colour[3 * i], colour[3 * i + 1], colour[3 * i + 2]) = (mean.X, mean.Y, mean.Z);
            alpha[i] = pixels[i].MeanAlpha;
        }

        if (isLast && settings.Denoise)
        {
            JointFilter.Run(size.Width, size.Height, Filterable, colour, settings.Threads, stop);
            ShadowFilter.Run(size.Width, size.Height, at => pixels[at].Facet == 0, alpha);
        }

        return new Picture(size, colour, alpha, noise, isLast && settings.KeepGuides ? Guides() : null);
    }

    private FilterPixel Filterable(int x, int y)
    {
        ref var pixel = ref pixels[y * size.Width + x];
        Float3 first = pixel.Even * (1f / Math.Max(1, (pixel.Count + 1) / 2)), second = pixel.Odd * (1f / Math.Max(1, pixel.Count / 2));
        if (pixel.Count < 2)
        {
            second = first;
        }

        if (settings.Clamp > 0)
        {
            var factor = Fireflies.Factor(PixelSums.Luminance(first), PixelSums.Luminance(second), BrightestNeighbour(x, y));
            first *= factor;
            second *= factor;
        }

        var guide = 1f / pixel.GuideCount;
        return new FilterPixel
        {
            First = (first.X, first.Y, first.Z),
            Second = (second.X, second.Y, second.Z),
            Variance = 2 * Spread(x, y),
            Albedo = (pixel.Albedo.X * guide, pixel.Albedo.Y * guide, pixel.Albedo.Z * guide),
            Normal = (pixel.Normal.X * guide, pixel.Normal.Y * guide, pixel.Normal.Z * guide),
            Facet = pixel.Facet,
        };
    }

    /// <summary>Variance of a pixel's mean, smoothed over its neighbours, since its own is known badly; a spark next door must not raise it.</summary>
    private float Spread(int x, int y)
    {
        float sum = 0;
        var count = 0;
        for (var yy = Math.Max(0, y - 1); yy <= Math.Min(size.Height - 1, y + 1); yy++)
        {
            for (var xx = Math.Max(0, x - 1); xx <= Math.Min(size.Width - 1, x + 1); xx++)
            {
                sum += pixels[yy * size.Width + xx].Variance;
                count++;
            }
        }

        return MathF.Min(sum / count, 4 * pixels[y * size.Width + x].Variance + 1e-6f);
    }

    private float BrightestNeighbour(int x, int y)
    {
        var brightest = 0f;
        for (var yy = Math.Max(0, y - 1); yy <= Math.Min(size.Height - 1, y + 1); yy++)
        {
            for (var xx = Math.Max(0, x - 1); xx <= Math.Min(size.Width - 1, x + 1); xx++)
            {
                if (xx != x || yy != y)
                {
                    brightest = MathF.Max(brightest, PixelSums.Luminance(pixels[yy * size.Width + xx].Mean));
                }
            }
        }

        return brightest;
    }

    private PictureGuides Guides()
    {
        var guides = new PictureGuides(new float[3 * size.Count], new float[3 * size.Count], new float[size.Count], new int[size.Count], new float[size.Count]);
        for (var i = 0; i < size.Count; i++)
        {
            ref var pixel = ref pixels[i];
            var share = 1f / pixel.GuideCount;
            Float3 albedo = pixel.Albedo * share, normal = pixel.Normal * share;
            (guides.Albedo[3 * i], guides.Albedo[3 * i + 1], guides.Albedo[3 * i + 2]) = (albedo.X, albedo.Y, albedo.Z);
            (guides.Normal[3 * i], guides.Normal[3 * i + 1], guides.Normal[3 * i + 2]) = (normal.X, normal.Y, normal.Z);
            guides.Depth[i] = pixel.Depth * share;
            guides.Facet[i] = pixel.Facet;
            guides.Variance[i] = pixel.Variance;
        }

        return guides;
    }
}
