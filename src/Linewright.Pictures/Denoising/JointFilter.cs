using System.Runtime.Intrinsics;

namespace Linewright.Pictures.Denoising;

/// <summary>Takes the noise out of a picture without smearing what it shows.</summary>
/// <remarks>
/// Each pixel becomes a mean of pixels near it whose surroundings look alike, where alike is judged on one half of the
/// samples and the mean taken over the other, so that noise cannot vouch for itself. A pixel never takes from another
/// facet, part or ground: edges stay where they are. Where the lens blurs one into the other there is no edge to keep, and
/// the surroundings alone decide. Light is divided by the surface's albedo first, so that patterns of the ground stay
/// sharp. It trades noise for bias: what differs by less than the noise inside one facet is evened out.
/// Sources: Buades, Coll and Morel (2005), A non-local algorithm for image denoising; halves and variance: Rousselle, Knaus
/// and Zwicker (2012), Adaptive rendering with non-local means filtering.
/// </remarks>
internal static class JointFilter
{
    /// <summary>How far it looks, pixels.</summary>
    public const int Radius = 5;

    /// <summary>Rows of a band. Measured: short enough to stay in the cache nearest but one.</summary>
    private const int BandRows = 16;

    /// <summary>How alike patches must be, in standard errors; a lower number keeps more detail and more noise.</summary>
    private const float Strictness = 0.5f;

    /// <summary>
    /// Weight of the half that is averaged in judging itself. Small: it only keeps sparks out, which the other half has not
    /// seen; a spark's light is lost with it.
    /// </summary>
    private const float Veto = 0.1f;

    /// <summary>Spread of normals over which smooth metal still counts as the same spot.</summary>
    private const float NormalSpread = 0.02f;

    /// <summary>Share of a difference that counts where the lens blurs: what is seen there is smooth by itself. Chosen by eye.</summary>
    private const float Ease = 0.4f;

    /// <summary>Filters a picture.</summary>
    /// <param name="width">Pixels across.</param>
    /// <param name="height">Pixels down.</param>
    /// <param name="pixel">Reads a pixel; called from several threads.</param>
    /// <param name="colour">Receives red, green, blue of every pixel.</param>
    /// <param name="alpha">Receives how much of every pixel is covered, with the same weights; null where all are wholly.</param>
    /// <param name="loop">Whose threads, how many; stops between bands.</param>
    public static void Run(int width, int height, Func<int, int, FilterPixel> pixel, float[] colour, float[]? alpha, ParallelOptions loop)
    {
        var bands = (height + BandRows - 1) / BandRows;
        Parallel.For(
            0,
            bands,
            loop,
            () => new Work(width, alpha is not null),
            (index, _, work) =>
            {
                var top = index * BandRows;
                work.Band.Fill(top, width, height, pixel);
                work.Filter();
                for (var y = top; y < Math.Min(top + BandRows, height); y++)
                {
                    for (var x = 0; x < width; x++)
                    {
                        work.Read(x, y - top, colour.AsSpan(3 * (y * width + x), 3));
                        if (alpha is not null)
                        {
                            alpha[y * width + x] = work.Alpha(x, y - top);
                        }
                    }
                }

                return work;
            },
            _ => { });
    }

    /// <summary>One thread's planes.</summary>
    private sealed class Work
    {
        private readonly float[] patchFirst;
        private readonly float[] patchSecond;
        private readonly float[][] sums;
        private readonly float[] weightFirst;
        private readonly float[] weightSecond;
        private readonly bool hasAlpha;

        public Work(int width, bool hasAlpha)
        {
            this.hasAlpha = hasAlpha;
            Band = new FilterBand(width, BandRows);
            var size = Band.Stride * Band.Rows;
            patchFirst = new float[size];
            patchSecond = new float[size];
            sums = [.. Enumerable.Range(0, hasAlpha ? 7 : 6).Select(_ => new float[size])];
            weightFirst = new float[size];
            weightSecond = new float[size];
        }

        public FilterBand Band { get; }

        public void Filter()
        {
            foreach (var plane in sums)
            {
                Array.Clear(plane);
            }

            Array.Clear(weightFirst);
            Array.Clear(weightSecond);
            for (var dy = -Radius; dy <= Radius; dy++)
            {
                for (var dx = -Radius; dx <= Radius; dx++)
                {
                    Compare(dx, dy);
                    Take(dx, dy);
                }
            }
        }

        /// <summary>Both halves' filtered light at a pixel, times its albedo.</summary>
        public void Read(int x, int row, Span<float> colour)
        {
            var at = (row + FilterBand.Margin) * Band.Stride + x + FilterBand.Margin;
            float a = 0.5f / weightFirst[at], b = 0.5f / weightSecond[at];
            colour[0] = (sums[0][at] * a + sums[3][at] * b) * Band.Albedo[0][at];
            colour[1] = (sums[1][at] * a + sums[4][at] * b) * Band.Albedo[1][at];
            colour[2] = (sums[2][at] * a + sums[5][at] * b) * Band.Albedo[2][at];
        }

        /// <summary>How much of a pixel is covered, filtered.</summary>
        public float Alpha(int x, int row)
        {
            var at = (row + FilterBand.Margin) * Band.Stride + x + FilterBand.Margin;
            return sums[6][at] / (weightFirst[at] + weightSecond[at]);
        }

        /// <summary>Squared difference of every pixel and the one at an offset, less what noise explains, in variances.</summary>
        private void Compare(int dx, int dy)
        {
            var offset = dy * Band.Stride + dx;
            var scale = Vector256.Create(Strictness * Strictness);
            for (var row = FilterBand.Margin - 1; row <= FilterBand.Margin + BandRows; row++)
            {
                var end = (row + 1) * Band.Stride - FilterBand.Margin - 7;
                for (var at = row * Band.Stride + FilterBand.Margin - 1; at < end; at += 8)
                {
                    Vector256<float> v = Load(Band.Variance, at), u = Load(Band.Variance, at + offset);
                    var noise = v + Vector256.MinNative(v, u);

                    // Measured in the pixel's own noise: a spark next door is all noise, and must not buy itself in with that.
                    var over = Vector256<float>.One / (Vector256.Create(1e-6f) + scale * noise);
                    Difference(Band.First, at, offset, noise, over).CopyTo(patchFirst, at);
                    Difference(Band.Second, at, offset, noise, over).CopyTo(patchSecond, at);
                }
            }
        }

        private static Vector256<float> Difference(float[][] planes, int at, int offset, Vector256<float> noise, Vector256<float> over)
        {
            Vector256<float> r = Load(planes[0], at) - Load(planes[0], at + offset);
            Vector256<float> g = Load(planes[1], at) - Load(planes[1], at + offset);
            Vector256<float> b = Load(planes[2], at) - Load(planes[2], at + offset);

            // One sample's colours scatter wider than its luminance: three channels, the noise of about three luminances each.
            return (r * r + g * g + b * b - Vector256.Create(3f) * noise) * over * Vector256.Create(1f / 3);
        }

        /// <summary>Adds the pixels at an offset, weighted by how alike the patches are on the other half.</summary>
        private void Take(int dx, int dy)
        {
            var offset = dy * Band.Stride + dx;
            for (var row = FilterBand.Margin; row < FilterBand.Margin + BandRows; row++)
            {
                var end = (row + 1) * Band.Stride - FilterBand.Margin - 7;
                for (var at = row * Band.Stride + FilterBand.Margin; at < end; at += 8)
                {
                    var kin = Vector256.Equals(Vector256.Create(Band.Key, at), Vector256.Create(Band.Key, at + offset)).AsSingle();
                    if (kin.ExtractMostSignificantBits() == 0)
                    {
                        continue;
                    }

                    var turned = Turned(at, offset);
                    var blurred = Vector256.Equals(Vector256.Create(Band.Key, at), Vector256.Create(FilterBand.Blurred)).AsSingle();
                    var share = Vector256.ConditionalSelect(blurred, Vector256.Create(Ease / 9), Vector256.Create(1f / 9));
                    Vector256<float> first = Patch(patchFirst, at) * share, second = Patch(patchSecond, at) * share;
                    var byFirst = Weight(first + second * Vector256.Create(Veto), turned) & kin;
                    var bySecond = Weight(second + first * Vector256.Create(Veto), turned) & kin;
                    for (var c = 0; c < 3; c++)
                    {
                        Add(sums[c], at, bySecond * Load(Band.First[c], at + offset));
                        Add(sums[3 + c], at, byFirst * Load(Band.Second[c], at + offset));
                    }

                    if (hasAlpha)
                    {
                        Add(sums[6], at, (byFirst + bySecond) * Load(Band.Alpha, at + offset));
                    }

                    Add(weightFirst, at, bySecond);
                    Add(weightSecond, at, byFirst);
                }
            }
        }

        private Vector256<float> Turned(int at, int offset)
        {
            Vector256<float> x = Load(Band.Normal[0], at) - Load(Band.Normal[0], at + offset);
            Vector256<float> y = Load(Band.Normal[1], at) - Load(Band.Normal[1], at + offset);
            Vector256<float> z = Load(Band.Normal[2], at) - Load(Band.Normal[2], at + offset);
            return (x * x + y * y + z * z) * Vector256.Create(1 / NormalSpread);
        }

        private Vector256<float> Patch(float[] plane, int at)
            => Row(plane, at - Band.Stride) + Row(plane, at) + Row(plane, at + Band.Stride);

        private static Vector256<float> Row(float[] plane, int at) => Load(plane, at - 1) + Load(plane, at) + Load(plane, at + 1);

        /// <summary>Falls like e to the minus x, without the function: one over the first five terms of e to the x.</summary>
        private static Vector256<float> Weight(Vector256<float> patch, Vector256<float> turned)
        {
            var x = Vector256.MaxNative(patch, Vector256<float>.Zero) + turned;
            var series = Vector256<float>.One + x * (Vector256<float>.One + x * (Vector256.Create(0.5f) + x * (Vector256.Create(1f / 6) + x * Vector256.Create(1f / 24))));
            return Vector256.LessThan(x, Vector256.Create(6f)) & (Vector256<float>.One / series);
        }

        private static Vector256<float> Load(float[] plane, int at) => Vector256.Create(plane, at);

        private static void Add(float[] plane, int at, Vector256<float> value) => (Load(plane, at) + value).CopyTo(plane, at);
    }
}
