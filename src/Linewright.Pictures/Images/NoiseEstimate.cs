using System.Collections.Immutable;

namespace Linewright.Pictures.Images;

/// <summary>Noise that is left, by tile, as estimated from the spread of the samples, before any filter.</summary>
/// <remarks>
/// A tile's figure is the root mean square standard error of its pixels' luminance over (mean luminance + 0.1): the
/// tenth of white keeps dark tiles from asking for work that nobody sees. An estimate is no bound: what no sample has
/// found yet is not in it.
/// </remarks>
/// <param name="TileSide">Pixels along a tile's side.</param>
/// <param name="Across">Tiles in a row.</param>
/// <param name="Tiles">Relative root mean square error of each tile, row by row.</param>
/// <param name="Overall">Root mean square over the tiles.</param>
/// <param name="MeanSamples">Samples a pixel, mean over the picture.</param>
public sealed record NoiseEstimate(int TileSide, int Across, ImmutableArray<float> Tiles, double Overall, double MeanSamples);
