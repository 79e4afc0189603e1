using Linewright.Solids.Space;

namespace Linewright.Pictures.Spectra;

/// <summary>Smooth reflectances for colours that are given only as red, green and blue.</summary>
/// <remarks>
/// Assumed: three overlapping shoulders, blue below 490 nm, red above 580 nm, green between, that add up to one, so
/// that grey is even. Their strengths are solved so that the colour under daylight is the one asked for, as far as
/// no wavelength throws back more than it gets.
/// </remarks>
public static class Reflectance
{
    private const double BlueEndsNm = 490;
    private const double RedBeginsNm = 580;
    private const double SoftnessNm = 14;

    private static readonly double[][] Solve = Inverse();

    /// <summary>A reflectance with this colour, linear sRGB, each 0 to 1.</summary>
    public static Spectrum OfColour(double red, double green, double blue)
    {
        Guard.InRange(red, 0, 1);
        Guard.InRange(green, 0, 1);
        Guard.InRange(blue, 0, 1);
        var weights = Solve.Select(row => Math.Clamp(row[0] * red + row[1] * green + row[2] * blue, 0, 1)).ToArray();
        return Spectrum.Of(nm => weights[0] * Shoulder(nm, 0) + weights[1] * Shoulder(nm, 1) + weights[2] * Shoulder(nm, 2));
    }

    private static double Shoulder(double nm, int which)
    {
        double aboveBlue = Step(nm - BlueEndsNm), aboveGreen = Step(nm - RedBeginsNm);
        return which switch { 0 => aboveGreen, 1 => aboveBlue - aboveGreen, _ => 1 - aboveBlue };
    }

    private static double Step(double nm) => 1 / (1 + Math.Exp(-nm / SoftnessNm));

    private static double[][] Inverse()
    {
        // Columns: colour of each shoulder under daylight.
        var m = new double[3, 3];
        for (var i = 0; i < 3; i++)
        {
            var which = i;
            (m[0, i], m[1, i], m[2, i]) = Observer.Surface(Illuminant.D65, nm => Shoulder(nm, which)).ToLinear();
        }

        double Minor(int r0, int r1, int c0, int c1) => m[r0, c0] * m[r1, c1] - m[r0, c1] * m[r1, c0];
        var det = m[0, 0] * Minor(1, 2, 1, 2) - m[0, 1] * Minor(1, 2, 0, 2) + m[0, 2] * Minor(1, 2, 0, 1);
        return
        [
            [Minor(1, 2, 1, 2) / det, -Minor(0, 2, 1, 2) / det, Minor(0, 1, 1, 2) / det],
            [-Minor(1, 2, 0, 2) / det, Minor(0, 2, 0, 2) / det, -Minor(0, 1, 0, 2) / det],
            [Minor(1, 2, 0, 1) / det, -Minor(0, 2, 0, 1) / det, Minor(0, 1, 0, 1) / det],
        ];
    }
}
