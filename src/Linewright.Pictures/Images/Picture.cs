namespace Linewright.Pictures.Images;

/// <summary>A finished or growing picture: linear light, row by row from the top left.</summary>
/// <remarks>
/// Colour is linear with the primaries of sRGB, not clipped: a facet's fire lies outside what a screen shows and may
/// be negative in one channel. 1 is a perfectly white, fully lit sheet under light of radiance 1. Where the ground is
/// transparent the colour is premultiplied by the alpha.
/// </remarks>
/// <param name="Size">Pixels across and down.</param>
/// <param name="Colour">Red, green, blue of each pixel; 3 x <see cref="PictureSize.Count"/> numbers.</param>
/// <param name="Alpha">1 where something stands, 0 where one looks through; one number a pixel.</param>
/// <param name="Noise">How sure the picture is of itself.</param>
/// <param name="Guides">What each pixel shows, for the filter; null in a preview.</param>
public sealed record Picture(PictureSize Size, float[] Colour, float[] Alpha, NoiseEstimate Noise, PictureGuides? Guides);
