namespace Linewright.Materials;

/// <summary>A reflectance in linear sRGB primaries, each 0 to 1; for pictures, never for identification.</summary>
public readonly record struct LinearColour(double Red, double Green, double Blue);
