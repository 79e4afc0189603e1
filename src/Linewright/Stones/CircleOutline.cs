namespace Linewright.Stones;

/// <summary>The girdle of a round stone.</summary>
/// <param name="DiameterMm">Girdle diameter, mm.</param>
public sealed record CircleOutline(double DiameterMm) : IGirdleOutline
{
    /// <inheritdoc/>
    public double PerimeterMm => Math.PI * DiameterMm;

    /// <inheritdoc/>
    public double RadiusMm(double azimuth) => DiameterMm / 2;

    /// <inheritdoc/>
    public double SupportMm(double azimuth) => DiameterMm / 2;
}
