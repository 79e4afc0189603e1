namespace Linewright.Pictures.Denoising;

/// <summary>Evens out the shadow on a ground that is left out of the picture: what is kept of it is its share of blocked light.</summary>
/// <remarks>
/// Gaussians of four widths over neighbours that show nothing but ground as well, so that no shadow bleeds into a body nor a body into its
/// shadow. From the widest on, what the next narrower one shows beyond it is taken over as far as noise cannot explain it: the
/// noise of a share p out of n samples is known, p (1 - p) / n. So a wide penumbra comes out smooth and the line of contact
/// stays. What differs by less than two standard errors within a width is evened out.
/// Source: James and Stein (1961), Estimation with quadratic loss, one shrinkage a place and width.
/// </remarks>
internal static class ShadowFilter
{
    /// <summary>Standard errors that a difference must exceed, squared. Measured on a known shadow: with less, single dark samples stay as specks.</summary>
    private const float Doubt = 4;

    /// <summary>Pixels, from fine to wide. Measured: a wider last one begins to flatten penumbras.</summary>
    private static readonly float[] Widths = [1, 2, 4, 8];

    /// <summary>Replaces the alpha of ground pixels by what the shadow about them says.</summary>
    /// <param name="width">Pixels across.</param>
    /// <param name="height">Pixels down.</param>
    /// <param name="isGround">Whether the pixel with that number shows nothing but ground.</param>
    /// <param name="samples">How many samples the pixel's alpha is the mean of.</param>
    /// <param name="alpha">One number a pixel, 0 to 1; changed in place.</param>
    /// <param name="loop">Whose threads, how many; stops between rows.</param>
    public static void Run(int width, int height, Func<int, bool> isGround, Func<int, int> samples, float[] alpha, ParallelOptions loop)
    {
        var mask = new float[alpha.Length];
        Parallel.For(0, height, loop, y =>
        {
            for (var at = y * width; at < (y + 1) * width; at++)
            {
                mask[at] = isGround(at) ? 1 : 0;
            }
        });
        if (!mask.Contains(1f))
        {
            return;
        }

        float[] masked = new float[alpha.Length], spread = new float[alpha.Length];
        Each(loop, mask, at => masked[at] = alpha[at]);
        float[]? known = null;
        for (var k = Widths.Length - 1; k >= 0; k--)
        {
            var cover = Blur(mask, width, height, Widths[k], loop);
            var mean = Blur(masked, width, height, Widths[k], loop);
            Each(loop, mask, at => mean[at] /= cover[at]);
            if (known is null)
            {
                known = mean;
                continue;
            }

            var wide = known;
            Each(loop, mask, at => spread[at] = (mean[at] - wide[at]) * (mean[at] - wide[at]));
            var difference = Blur(spread, width, height, 2 * Widths[k], loop);
            var about = Blur(mask, width, height, 2 * Widths[k], loop);
            var area = 4 * MathF.PI * Widths[k] * Widths[k];
            Each(loop, mask, at =>
            {
                float n = Math.Max(1, samples(at)), p = Math.Clamp(wide[at], 0.5f / n, 1 - 0.5f / n);
                var noise = Doubt * p * (1 - p) / (n * area * cover[at]);
                var kept = MathF.Max(0, 1 - noise * about[at] / MathF.Max(difference[at], 1e-12f));
                wide[at] += kept * (mean[at] - wide[at]);
            });
        }

        Each(loop, mask, at => alpha[at] = Math.Clamp(known![at], 0, 1));
    }

    private static void Each(ParallelOptions loop, float[] mask, Action<int> act)
    {
        const int Chunk = 8192;
        Parallel.For(0, (mask.Length + Chunk - 1) / Chunk, loop, chunk =>
        {
            for (var at = chunk * Chunk; at < Math.Min(mask.Length, (chunk + 1) * Chunk); at++)
            {
                if (mask[at] > 0)
                {
                    act(at);
                }
            }
        });
    }

    // Along one axis and then along the other: a Gaussian is the product of two.
    private static float[] Blur(float[] plane, int width, int height, float sigma, ParallelOptions loop)
    {
        var reach = (int)MathF.Ceiling(2.5f * sigma);
        var weights = Enumerable.Range(-reach, 2 * reach + 1).Select(i => MathF.Exp(-0.5f * i * i / (sigma * sigma))).ToArray();
        var all = weights.Sum();
        weights = [.. weights.Select(w => w / all)];
        float[] half = new float[plane.Length], result = new float[plane.Length];
        Parallel.For(0, height, loop, y =>
        {
            for (var x = 0; x < width; x++)
            {
                var sum = 0f;
                for (var k = Math.Max(-reach, -x); k <= Math.Min(reach, width - 1 - x); k++)
                {
                    sum += plane[y * width + x + k] * weights[k + reach];
                }

                half[y * width + x] = sum;
            }
        });
        Parallel.For(0, height, loop, y =>
        {
            var row = result.AsSpan(y * width, width);
            for (var k = Math.Max(-reach, -y); k <= Math.Min(reach, height - 1 - y); k++)
            {
                var from = half.AsSpan((y + k) * width, width);
                var weight = weights[k + reach];
                for (var x = 0; x < width; x++)
                {
                    row[x] += from[x] * weight;
                }
            }
        });
        return result;
    }
}
