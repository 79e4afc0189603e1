using Linewright.Solids.Space;

namespace Linewright.Tolerance;

/// <summary>Independent standard normal numbers, found by piece, stream and place: drawn in any order, by any thread, they are the same.</summary>
/// <param name="seed">Another seed is another lot of pieces.</param>
public readonly struct Scatter(ulong seed)
{
    private const double Word = 1.0 / 4294967296.0;

    /// <summary>Fills a span with a piece's numbers.</summary>
    /// <param name="piece">Which piece of the lot.</param>
    /// <param name="stream">Which of its features; each has a stream of its own.</param>
    /// <param name="normals">Filled from its start.</param>
    public void Fill(int piece, int stream, Span<double> normals)
    {
        Guard.InRange(piece, 0, int.MaxValue);
        Guard.InRange(stream, 0, int.MaxValue);
        for (var i = 0; i < normals.Length; i += 4)
        {
            // The middle of each of 2^32 equal shares: never 0 or 1, and out to 6.3 deviations.
            var words = Philox.Words((uint)piece, (uint)(i / 4), (uint)stream, 0, seed);
            var left = normals.Length - i;
            normals[i] = (words.A + 0.5) * Word;
            if (left > 1)
            {
                normals[i + 1] = (words.B + 0.5) * Word;
            }

            if (left > 2)
            {
                normals[i + 2] = (words.C + 0.5) * Word;
            }

            if (left > 3)
            {
                normals[i + 3] = (words.D + 0.5) * Word;
            }
        }

        InverseNormal.Replace(normals);
    }
}
