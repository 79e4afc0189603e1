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
        var map = new NoiseMap(pixels, size, TileSide, settings);
        var pass = Begin(map, progress) + 1;
        var share = 0.0;
        for (; ; pass++)
        {
            samples += sampler.Pass(wanted, pixels, stop);
            var noise = map.Measure();
            var left = map.Plan(noise, wanted);
            share = Math.Max(share, samples / (double)(samples + left));
            progress?.Report(new PictureProgress(share, pass, samples, noise.Overall, () => Finish(noise, false)));
            // The last passes would each add a handful of samples: less than the eye or the estimate can tell.
            if (left * Remainder <= samples)
            {
                return Finish(noise, true);
            }
        }
    }

    /// <summary>Takes the first samples in parts where they are to be seen, all but the last part; returns how many parts.</summary>
    /// <remarks>No decision falls before all of them are there: the picture is the same without the parts.</remarks>
    private int Begin(NoiseMap map, IProgress<PictureProgress>? progress)
    {
        var first = Math.Min(FirstPass, settings.MaxSamples);
        var (taken, parts) = (0, 0);
        while (settings.ShowsEarly && progress is not null && Math.Max(1, 2 * taken) < first)
        {
            var more = Math.Max(1, taken);
            wanted.AsSpan().Fill((ushort)more);
            samples += sampler.Pass(wanted, pixels, stop);
            (taken, parts) = (taken + more, parts + 1);
            var noise = map.Measure();
            progress.Report(new PictureProgress(
                taken / (double)settings.MaxSamples, parts, samples, taken == 1 ? double.NaN : noise.Overall, () => Finish(noise, false)));
        }

        wanted.AsSpan().Fill((ushort)(first - taken));
        return parts;
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
            var loop = settings.Work(stop);
            var covered = alpha.Any(a => a < 0.9999f) ? new float[size.Count] : null;
            JointFilter.Run(size.Width, size.Height, Filterable, colour, covered, loop);
            if (covered is not null)
            {
                ShadowFilter.Run(size.Width, size.Height, IsBareGround, at => pixels[at].Count, alpha, loop);
                alpha = [.. alpha.Select((a, i) => IsBareGround(i) ? a : covered[i])];
            }
        }

        return new Picture(size, colour, alpha, noise, isLast && settings.KeepGuides ? Guides() : null);
    }

    /// <summary>Whether a pixel shows nothing but what one looks through: no sample brought any light.</summary>
    private bool IsBareGround(int at)
    {
        var light = pixels[at].Mean;
        return pixels[at].Facet == 0 && light.X == 0 && light.Y == 0 && light.Z == 0;
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

        var guide = 1f / Math.Max(1, pixel.Count);
        return new FilterPixel
        {
            First = (first.X, first.Y, first.Z),
            Second = (second.X, second.Y, second.Z),
            Variance = 2 * Spread(x, y),
            Albedo = (pixel.Albedo.X * guide, pixel.Albedo.Y * guide, pixel.Albedo.Z * guide),
            Normal = (pixel.Normal.X * guide, pixel.Normal.Y * guide, pixel.Normal.Z * guide),
            Alpha = pixel.MeanAlpha,
            Facet = pixel.Facet,
            IsMatte = pixel.Facet == 1,
            Blur = pixel.Blur * guide,
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
            var share = 1f / Math.Max(1, pixel.Count);
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
