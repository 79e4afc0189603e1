using Linewright.Solids.Space;

namespace Linewright.Pictures.Spectra;

/// <summary>A quantity over wavelength: straight lines between rows, the outer rows held beyond the ends.</summary>
/// <remarks>Wavelength in nm in vacuum. Never changes; safe from any thread.</remarks>
public sealed class Spectrum
{
    private readonly double[] nm;
    private readonly double[] values;

    /// <summary>From rows.</summary>
    /// <param name="nm">Wavelengths, rising, nm.</param>
    /// <param name="values">One finite value a wavelength.</param>
    /// <exception cref="ArgumentException">Lengths differ, nothing is given, or the wavelengths do not rise.</exception>
    public Spectrum(IEnumerable<double> nm, IEnumerable<double> values)
    {
        this.nm = [.. nm];
        this.values = [.. values];
        if (this.nm.Length == 0 || this.nm.Length != this.values.Length)
        {
            throw new ArgumentException("a spectrum needs one value for each of at least one wavelength");
        }

        for (var i = 0; i < this.nm.Length; i++)
        {
            Guard.Finite(this.values[i], nameof(values));
            if (i > 0 && this.nm[i] <= this.nm[i - 1])
            {
                throw new ArgumentException("wavelengths must rise", nameof(nm));
            }
        }
    }

    /// <summary>Zero everywhere.</summary>
    public static Spectrum Zero { get; } = Constant(0);

    /// <summary>The same at every wavelength.</summary>
    public static Spectrum Constant(double value) => new([550], [value]);

    /// <summary>A rule, taken down every 2 nm from 360 to 830 nm.</summary>
    public static Spectrum Of(Func<double, double> rule)
    {
        ArgumentNullException.ThrowIfNull(rule);
        var rows = Enumerable.Range(0, 236).Select(i => 360.0 + 2 * i).ToList();
        return new Spectrum(rows, rows.Select(rule));
    }

    /// <summary>Value at a wavelength in nm.</summary>
    public double At(double wavelengthNm)
    {
        if (wavelengthNm <= nm[0])
        {
            return values[0];
        }

        if (wavelengthNm >= nm[^1])
        {
            return values[^1];
        }

        var found = Array.BinarySearch(nm, wavelengthNm);
        if (found >= 0)
        {
            return values[found];
        }

        var next = ~found;
        var share = (wavelengthNm - nm[next - 1]) / (nm[next] - nm[next - 1]);
        return values[next - 1] + share * (values[next] - values[next - 1]);
    }

    /// <summary>Every value times a number.</summary>
    public Spectrum Times(double factor) => new(nm, values.Select(v => v * factor));
}
