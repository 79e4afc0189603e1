using System.Numerics;

namespace Linewright.Pictures.Spectra;

/// <summary>Index of a metal over wavelength: n + ik.</summary>
/// <param name="Name">What it is.</param>
/// <param name="N">Real part.</param>
/// <param name="K">Extinction, not negative.</param>
/// <param name="Source">Where the figures come from, with a mark where they are mixed or assumed.</param>
public sealed record ComplexIndex(string Name, Spectrum N, Spectrum K, string Source)
{
    /// <summary>A mirror that loses nothing: for tests of energy.</summary>
    public static ComplexIndex Perfect { get; } = new("perfect mirror", Spectrum.Constant(0), Spectrum.Constant(10), "Assumed: n = 0 reflects everything");

    /// <summary>Share of light thrown straight back at a wavelength in nm.</summary>
    public double NormalReflectance(double nm)
    {
        double n = N.At(nm), k = K.At(nm);
        return ((n - 1) * (n - 1) + k * k) / ((n + 1) * (n + 1) + k * k);
    }

    /// <summary>Colour at normal incidence under daylight, linear sRGB.</summary>
    public (double Red, double Green, double Blue) NormalColour() => Observer.Surface(Illuminant.D65, NormalReflectance).ToLinear();

    /// <summary>Square of the index: what mixes by volume.</summary>
    internal Complex Permittivity(double nm)
    {
        var index = new Complex(N.At(nm), K.At(nm));
        return index * index;
    }

    internal static ComplexIndex FromPermittivity(string name, Func<double, Complex> rule, string source) => new(
        name, Spectrum.Of(nm => Complex.Sqrt(rule(nm)).Real), Spectrum.Of(nm => Complex.Sqrt(rule(nm)).Imaginary), source);
}
