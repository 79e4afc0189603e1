using System.Collections.Immutable;
using Linewright.Solids.Space;

namespace Linewright.Pictures.Spectra;

/// <summary>Index of a clear substance over wavelength: Sellmeier's sum n2 = 1 + c + sum A L2 / (L2 - B), or Cauchy's n = a + b / L2, L in micrometres.</summary>
/// <remarks>Holds in the visible only; ordinary ray where there are two.</remarks>
public sealed class RefractiveIndex
{
    // Fraunhofer's lines as the trade uses them, nm. Source: Fraunhofer (1817); wavelengths: CRC Handbook.
    private const double LineB = 686.7;
    private const double LineD = 589.3;
    private const double LineG = 430.8;

    private readonly double constant;
    private readonly ImmutableArray<(double A, double B)> terms;
    private readonly double cauchyA;
    private readonly double cauchyB;

    private RefractiveIndex(double constant, ImmutableArray<(double A, double B)> terms, double cauchyA, double cauchyB)
        => (this.constant, this.terms, this.cauchyA, this.cauchyB) = (constant, terms, cauchyA, cauchyB);

    /// <summary>Index at the trade's line D, 589.3 nm.</summary>
    public double AtD => At(LineD);

    /// <summary>The trade's dispersion: index at line G less index at line B.</summary>
    public double BMinusG => At(LineG) - At(LineB);

    /// <summary>Whether all wavelengths go the same way.</summary>
    public bool IsConstant => terms.IsEmpty && cauchyB == 0;

    /// <summary>Sellmeier's sum.</summary>
    /// <param name="constant">c, often 0.</param>
    /// <param name="terms">A and B of each term, B in square micrometres.</param>
    public static RefractiveIndex Sellmeier(double constant, IEnumerable<(double A, double B)> terms)
        => new(constant, [.. terms], 0, 0);

    /// <summary>Cauchy's curve with two terms.</summary>
    /// <param name="a">Index at endless wavelength.</param>
    /// <param name="b">Square micrometres.</param>
    public static RefractiveIndex Cauchy(double a, double b) => new(0, [], Guard.InRange(a, 1, 5), Guard.InRange(b, 0, 1));

    /// <summary>Cauchy's curve through the two figures that every table of stones has.</summary>
    /// <param name="atD">Index at 589.3 nm.</param>
    /// <param name="bMinusG">Index at 430.8 nm less index at 686.7 nm.</param>
    public static RefractiveIndex FromTrade(double atD, double bMinusG)
    {
        static double Curl(double nm) => 1e6 / (nm * nm);
        var b = bMinusG / (Curl(LineG) - Curl(LineB));
        return Cauchy(atD - b * Curl(LineD), b);
    }

    /// <summary>Index at a wavelength in nm.</summary>
    public double At(double nm)
    {
        var square = nm * nm * 1e-6;
        if (terms.IsEmpty)
        {
            return cauchyA + cauchyB / square;
        }

        var sum = 1 + constant;
        foreach (var (a, b) in terms)
        {
            sum += a * square / (square - b);
        }

        return Math.Sqrt(sum);
    }
}
