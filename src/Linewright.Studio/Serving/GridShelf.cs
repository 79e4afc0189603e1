using System.Security.Cryptography;
using Linewright.Quote;

namespace Linewright.Studio.Serving;

/// <summary>The grid reckoned last, so that its workbook does not cost what the grid has cost.</summary>
internal sealed class GridShelf
{
    private readonly Lock gate = new();
    private byte[] key = [];
    private QuoteGrid? last;
    private int reckoned;

    /// <summary>How many grids had to be reckoned.</summary>
    public int Reckoned => Volatile.Read(ref reckoned);

    /// <summary>The grid of a request, reckoned now unless the last one asked the same.</summary>
    /// <param name="body">The request's body, which says all.</param>
    /// <param name="compute">Reckons it.</param>
    /// <param name="stop">Asks to stop.</param>
    public async Task<QuoteGrid> GetAsync(byte[] body, Func<QuoteGrid> compute, CancellationToken stop)
    {
        var asked = SHA256.HashData(body);
        lock (gate)
        {
            if (last is not null && key.AsSpan().SequenceEqual(asked))
            {
                return last;
            }
        }

        Interlocked.Increment(ref reckoned);
        var grid = await Task.Run(compute, stop).ConfigureAwait(false);
        lock (gate)
        {
            (key, last) = (asked, grid);
        }

        return grid;
    }
}
