namespace Linewright.Pictures.Spectra;

/// <summary>The standard observer of 1931, 2 degrees: turns light into colour.</summary>
/// <remarks>Tables in data/light/observer.json, every 5 nm from 380 to 780 nm. Source: ISO/CIE 11664-1.</remarks>
public static class Observer
{
    /// <summary>First wavelength that is seen here, nm.</summary>
    public const double FirstNm = 380;

    /// <summary>Last wavelength that is seen here, nm.</summary>
    public const double LastNm = 780;

    private const double StepNm = 1;

    private static readonly Spectrum XBar = LightTables.Curve("x-bar");
    private static readonly Spectrum YBar = LightTables.Curve("y-bar");
    private static readonly Spectrum ZBar = LightTables.Curve("z-bar");

    /// <summary>The three matching functions at a wavelength in nm; zero outside 380 to 780.</summary>
    public static Tristimulus At(double nm)
        => nm is < FirstNm or > LastNm ? default : new Tristimulus(XBar.At(nm), YBar.At(nm), ZBar.At(nm));

    /// <summary>Light summed against the matching functions every nm; not normalised.</summary>
    public static Tristimulus Sum(Spectrum light)
    {
        ArgumentNullException.ThrowIfNull(light);
        double x = 0, y = 0, z = 0;
        for (var nm = FirstNm; nm <= LastNm; nm += StepNm)
        {
            var (bx, by, bz) = At(nm);
            var power = light.At(nm) * StepNm;
            x += bx * power;
            y += by * power;
            z += bz * power;
        }

        return new Tristimulus(x, y, z);
    }

    /// <summary>Colour of a surface under a light, with Y = 1 for a surface that throws everything back.</summary>
    public static Tristimulus Surface(Spectrum light, Func<double, double> reflectance)
    {
        ArgumentNullException.ThrowIfNull(light);
        ArgumentNullException.ThrowIfNull(reflectance);
        double x = 0, y = 0, z = 0, white = 0;
        for (var nm = FirstNm; nm <= LastNm; nm += StepNm)
        {
            var (bx, by, bz) = At(nm);
            var power = light.At(nm) * StepNm;
            var back = power * reflectance(nm);
            x += bx * back;
            y += by * back;
            z += bz * back;
            white += by * power;
        }

        return new Tristimulus(x / white, y / white, z / white);
    }
}
