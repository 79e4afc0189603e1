using Linewright.Pictures.Images;
using Linewright.Pictures.Transport;

namespace Linewright.Pictures.Gpu;

/// <summary>Shares a pass out into tasks, a run of them at a time.</summary>
/// <remarks>
/// Lanes near each other look at 8 by 4 pixels, so that their rays go much the same way. Tasks of one pixel follow each other in
/// the order of their samples. What is shared out depends on the samples that are wanted alone, never on the card.
/// </remarks>
internal sealed class CardTasks
{
    /// <summary>Tasks of one run. Assumed: some hundred megabytes for their sums, and well under a second of a card's time.</summary>
    public const int MostOfARun = 1 << 21;

    /// <summary>Tasks that keep a large card's lanes busy several times over, so that the last to end do not keep it waiting.</summary>
    public const int Plenty = 1 << 19;

    private const int BlockWidth = 8;
    private const int BlockHeight = 4;

    /// <summary>Samples of one task. Measured: enough that beginning it costs nothing.</summary>
    private const int MostOfATask = 16;

    private readonly PictureSize size;
    private readonly int plenty;
    private readonly int[] order;
    private readonly int[] bandStart;
    private ushort[] wanted = [];
    private PixelSums[] pixels = [];
    private int share;
    private int at;
    private int taken;

    /// <param name="size">Of the picture.</param>
    /// <param name="plenty">Tasks that a pass is shared out to, if it has so many samples.</param>
    public CardTasks(PictureSize size, int plenty)
    {
        this.size = size;
        this.plenty = plenty;
        order = new int[size.Count];
        bandStart = new int[(size.Height + BlockHeight - 1) / BlockHeight + 1];
    }

    /// <summary>Looks through the pixels that want samples.</summary>
    /// <returns>Samples of the pass.</returns>
    public long Begin(ushort[] wantedSamples, PixelSums[] gathered)
    {
        (wanted, pixels, at, taken) = (wantedSamples, gathered, 0, 0);
        long samples = 0;
        Parallel.For(0, bandStart.Length - 1, band =>
        {
            long sum = 0;
            var some = 0;
            foreach (var count in wanted.AsSpan(Rows(band)))
            {
                sum += count;
                some += count > 0 ? 1 : 0;
            }

            bandStart[band + 1] = some;
            Interlocked.Add(ref samples, sum);
        });
        for (var band = 1; band < bandStart.Length; band++)
        {
            bandStart[band] += bandStart[band - 1];
        }

        Parallel.For(0, bandStart.Length - 1, Sort);
        share = (int)Math.Clamp(samples / plenty, 1, MostOfATask);
        return samples;
    }

    /// <summary>Writes the next run's tasks.</summary>
    /// <returns>How many there are; 0 at the end of the pass.</returns>
    public int Next(CardTask[] tasks)
    {
        var count = 0;
        for (; at < bandStart[^1]; at++)
        {
            var pixel = order[at];
            int from = pixels[pixel].Count, want = wanted[pixel];
            for (; taken < want; taken += share)
            {
                if (count == tasks.Length)
                {
                    return count;
                }

                tasks[count++] = new CardTask { Pixel = pixel, First = from + taken, End = from + Math.Min(want, taken + share) };
            }

            taken = 0;
        }

        return count;
    }

    private Range Rows(int band) => new(band * BlockHeight * size.Width, Math.Min((band + 1) * BlockHeight, size.Height) * size.Width);

    /// <summary>Lists a band's pixels block by block.</summary>
    private void Sort(int band)
    {
        int count = bandStart[band], top = band * BlockHeight, bottom = Math.Min(top + BlockHeight, size.Height);
        for (var left = 0; left < size.Width && count < bandStart[band + 1]; left += BlockWidth)
        {
            for (var y = top; y < bottom; y++)
            {
                for (var x = left; x < Math.Min(left + BlockWidth, size.Width); x++)
                {
                    if (wanted[y * size.Width + x] > 0)
                    {
                        order[count++] = y * size.Width + x;
                    }
                }
            }
        }
    }
}
