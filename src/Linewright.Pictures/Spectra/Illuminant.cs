using Linewright.Solids.Space;

namespace Linewright.Pictures.Spectra;

/// <summary>Spectra of lights. Only their shape counts; a light's strength is given where it stands.</summary>
public static class Illuminant
{
    // Second radiation constant in m K. Source: CODATA 2018, exact to the digits given.
    private const double C2 = 1.438776877e-2;

    /// <summary>Daylight with a correlated temperature of about 6,504 K. Source: ISO/CIE 11664-2.</summary>
    public static Spectrum D65 { get; } = LightTables.Curve("d65");

    /// <summary>A tungsten lamp: Planck's law at 2,848 K under the old constant, 2,855.5 K now. Source: ISO/CIE 11664-2, section 4.1.</summary>
    public static Spectrum A { get; } = Spectrum.Of(nm => 100 * Math.Pow(560 / nm, 5)
        * (Math.Exp(1.435e7 / (2848 * 560)) - 1) / (Math.Exp(1.435e7 / (2848 * nm)) - 1));

    /// <summary>Light of a colour temperature: daylight's own table near 6,500 K, Planck's law otherwise.</summary>
    /// <param name="kelvin">1,000 to 25,000.</param>
    /// <exception cref="ArgumentOutOfRangeException">Outside the range.</exception>
    public static Spectrum OfTemperature(double kelvin)
    {
        Guard.InRange(kelvin, 1000, 25000);

        // Assumed: within 60 K nobody sees the difference between the table and the curve, but the table is a standard.
        return Math.Abs(kelvin - 6504) < 60 ? D65 : Spectrum.Of(nm => Planck(nm, kelvin) / Planck(560, kelvin));
    }

    /// <summary>Spectral radiance of a black body, arbitrary unit. Source: Planck (1900).</summary>
    private static double Planck(double nm, double kelvin)
        => Math.Pow(nm, -5) / (Math.Exp(C2 / (nm * 1e-9 * kelvin)) - 1);
}
