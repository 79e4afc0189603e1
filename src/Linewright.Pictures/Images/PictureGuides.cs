namespace Linewright.Pictures.Images;

/// <summary>What each pixel shows, free of noise, means over the pixel's samples.</summary>
/// <param name="Albedo">Share of light that the first surface throws back, red, green, blue; 1 for clear stones.</param>
/// <param name="Normal">Of the first surface, x, y, z in the scene's frame; shorter than 1 where surfaces meet.</param>
/// <param name="Depth">Distance from the eye in mm; 0 where nothing stands.</param>
/// <param name="Facet">Number of the first surface that most samples saw: 0 nothing, then ground, metal parts, and each stone's facets apart.</param>
/// <param name="Variance">Of the pixel's mean luminance, before any filter.</param>
public sealed record PictureGuides(float[] Albedo, float[] Normal, float[] Depth, int[] Facet, float[] Variance);
