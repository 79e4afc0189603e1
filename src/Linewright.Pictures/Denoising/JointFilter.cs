using System.Runtime.Intrinsics;

namespace Linewright.Pictures.Denoising;

/// <summary>Takes the noise out of a picture without smearing what it shows.</summary>
/// <remarks>
/// Each pixel becomes a mean of pixels near it whose surroundings look alike, where alike is judged on one half of the
/// samples and the mean taken over the other, so that noise cannot vouch for itself. A pixel never takes from another
/// facet, part or ground: edges stay where they are. Where the lens blurs one into the other there is no edge to keep, and
/// the surroundings alone decide; there and on matte ground, where light changes slowly, coarser sizes of the picture say what
/// wider means are. Light is divided by the surface's albedo first, so that patterns of the ground stay sharp. Grey and colour are judged and averaged each for itself. All strengths were set where ten diamonds came nearest to
/// their truth. It trades noise for bias: what differs by less than the noise inside one facet is evened out.
/// Sources: Buades, Coll and Morel (2005), A non-local algorithm for image denoising; halves and variance: Rousselle, Knaus
/// and Zwicker (2012), Adaptive rendering with non-local means filtering.
/// </remarks>
internal static class JointFilter
{
    /// <summary>How far it looks, pixels.</summary>
    public const int Radius = 5;

    /// <summary>Rows of a band. Measured: short enough to stay in the cache nearest but one.</summary>
    private const int BandRows = 16;

    /// <summary>
    /// Coarser sizes at which the picture is filtered as well, each half the one before. Measured: with a third one shadows on the ground lose their shape.
    /// </summary>
    private const int Coarser = 2;

    /// <summary>How alike patches must be in grey, in standard errors; a lower number keeps more detail and more noise.</summary>
    private const float GreyStrictness = 0.7f;

    /// <summary>The same in colour. Looser: a path through a stone has one wavelength, so noise is mostly colour, and detail mostly grey.</summary>
    private const float ColourStrictness = 1.5f;

    /// <summary>What unlike colour counts against a neighbour's grey, and unlike grey against its colour.</summary>
    private const float ColourInGrey = 0.1f;

    private const float GreyInColour = 0.3f;

    /// <summary>
    /// Weight of the half that is averaged in judging itself. Small: it only keeps sparks out, which the other half has not
    /// seen; a spark's light is lost with it.
    /// </summary>
    private const float Veto = 0.3f;

    /// <summary>Spread of normals over which smooth metal still counts as the same spot.</summary>
    private const float NormalSpread = 0.02f;

    /// <summary>Filters a picture.</summary>
    /// <param name="width">Pixels across.</param>
    /// <param name="height">Pixels down.</param>
    /// <param name="pixel">Reads a pixel; called from several threads.</param>
    /// <param name="colour">Receives red, green, blue of every pixel.</param>
    /// <param name="alpha">Receives how much of every pixel is covered, with the same weights; null where all are wholly.</param>
    /// <param name="loop">Whose threads, how many; stops between bands.</param>
    public static void Run(int width, int height, Func<int, int, FilterPixel> pixel, float[] colour, float[]? alpha, ParallelOptions loop)
    {
        var kin = KinMap.Of(width, height, pixel, loop);
        Run(new FilterLevel(width, height, pixel, kin, kin.Keys, colour, alpha), Coarser, loop);
    }

    private static void Run(FilterLevel level, int coarser, ParallelOptions loop)
    {
        Filter(level, loop);
        if (coarser > 0)
        {
            var half = level.Halve(loop);
            Run(half, coarser - 1, loop);
            level.Learn(half, loop);
        }
    }

    /// <summary>Filters a picture at one size.</summary>
    private static void Filter(FilterLevel level, ParallelOptions loop)
    {
        int width = level.Width, height = level.Height;
        var bands = (height + BandRows - 1) / BandRows;
        Parallel.For(
            0,
            bands,
            loop,
            () => new Work(width, level.Alpha is not null),
            (index, _, work) =>
            {
                var top = index * BandRows;
                work.Band.Fill(top, level);
                work.Filter();
                for (var y = top; y < Math.Min(top + BandRows, height); y++)
                {
                    for (var x = 0; x < width; x++)
                    {
                        work.Read(x, y - top, level.Colour.AsSpan(3 * (y * width + x), 3));
                        if (level.Alpha is not null)
                        {
                            level.Alpha[y * width + x] = work.Alpha(x, y - top);
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
        private readonly FilterAxis grey;
        private readonly FilterAxis colour;
        private readonly float[]? alpha;

        public Work(int width, bool hasAlpha)
        {
            Band = new FilterBand(width, BandRows);
            grey = new FilterAxis(Band, 0, 1);
            colour = new FilterAxis(Band, 1, 2);
            alpha = hasAlpha ? new float[Band.Stride * Band.Rows] : null;
        }

        public FilterBand Band { get; }

        public void Filter()
        {
            grey.Clear();
            colour.Clear();
            if (alpha is not null)
            {
                Array.Clear(alpha);
            }

            for (var dy = -Radius; dy <= Radius; dy++)
            {
                for (var dx = -Radius; dx <= Radius; dx++)
                {
                    var offset = dy * Band.Stride + dx;
                    grey.Compare(Band, offset, GreyStrictness, BandRows);
                    colour.Compare(Band, offset, ColourStrictness, BandRows);
                    Take(offset);
                }
            }
        }

        /// <summary>Both halves' filtered light at a pixel, times its albedo.</summary>
        public void Read(int x, int row, Span<float> result)
        {
            var at = (row + FilterBand.Margin) * Band.Stride + x + FilterBand.Margin;
            var (red, green, blue) = FilterBand.Colour(grey.Read(0, at), colour.Read(0, at), colour.Read(1, at));
            result[0] = red * Band.Albedo[0][at];
            result[1] = green * Band.Albedo[1][at];
            result[2] = blue * Band.Albedo[2][at];
        }

        /// <summary>How much of a pixel is covered, filtered with grey's weights.</summary>
        public float Alpha(int x, int row)
        {
            var at = (row + FilterBand.Margin) * Band.Stride + x + FilterBand.Margin;
            return alpha is null ? 1 : alpha[at] / grey.Weight(at);
        }

        /// <summary>Adds the pixels at an offset, weighted by how alike the patches are on the other half.</summary>
        private void Take(int offset)
        {
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
                    Vector256<float> ease = Vector256.Create(Band.Ease, at), most = Vector256.Create(Band.Most, at);
                    Vector256<float> greyFirst = grey.Patch(grey.PatchFirst, at, most) * ease, greySecond = grey.Patch(grey.PatchSecond, at, most) * ease;
                    Vector256<float> colourFirst = colour.Patch(colour.PatchFirst, at, most) * ease, colourSecond = colour.Patch(colour.PatchSecond, at, most) * ease;
                    Vector256<float> greyByFirst = greyFirst + greySecond * Veto, greyBySecond = greySecond + greyFirst * Veto;
                    Vector256<float> colourByFirst = colourFirst + colourSecond * Veto, colourBySecond = colourSecond + colourFirst * Veto;
                    var byFirst = Weight(greyByFirst + colourByFirst * ColourInGrey, turned) & kin;
                    var bySecond = Weight(greyBySecond + colourBySecond * ColourInGrey, turned) & kin;
                    grey.Add(Band, at, offset, byFirst, bySecond);
                    if (alpha is not null)
                    {
                        FilterAxis.Add(alpha, at, (byFirst + bySecond) * Vector256.Create(Band.Alpha, at + offset));
                    }

                    colour.Add(
                        Band, at, offset, Weight(colourByFirst + greyByFirst * GreyInColour, turned) & kin,
                        Weight(colourBySecond + greyBySecond * GreyInColour, turned) & kin);
                }
            }
        }

        private Vector256<float> Turned(int at, int offset)
        {
            Vector256<float> x = Step(Band.Normal[0], at, offset), y = Step(Band.Normal[1], at, offset), z = Step(Band.Normal[2], at, offset);
            return (x * x + y * y + z * z) * Vector256.Create(1 / NormalSpread);
        }

        private static Vector256<float> Step(float[] plane, int at, int offset) => Vector256.Create(plane, at) - Vector256.Create(plane, at + offset);

        /// <summary>Falls like e to the minus x, without the function: one over the first five terms of e to the x.</summary>
        private static Vector256<float> Weight(Vector256<float> patch, Vector256<float> turned)
        {
            var x = Vector256.MaxNative(patch, Vector256<float>.Zero) + turned;
            var series = Vector256<float>.One + x * (Vector256<float>.One + x * (Vector256.Create(0.5f) + x * (Vector256.Create(1f / 6) + x * Vector256.Create(1f / 24))));
            return Vector256.LessThan(x, Vector256.Create(6f)) & (Vector256<float>.One / series);
        }
    }
}
