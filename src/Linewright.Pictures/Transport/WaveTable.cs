using Linewright.Pictures.Spectra;

namespace Linewright.Pictures.Transport;

/// <summary>1,024 wavelengths, each as likely as it is well seen, and curves read at them.</summary>
internal static class WaveTable
{
    // Beyond these the observer sees less than a thousandth. Source: ISO/CIE 11664-1.
    private const double FirstNm = 385;
    private const double LastNm = 740;
    private const int Steps = 3550;

    /// <summary>All bins; the mean over them of their weights times a curve is that curve's colour.</summary>
    public static WaveBin[] Bins { get; } = Fill();

    /// <summary>A curve at all wavelengths.</summary>
    public static float[] Column(Func<double, double> rule) => [.. Bins.Select(bin => (float)rule(bin.Nm))];

    /// <summary>A light's curve, scaled to luminance 1.</summary>
    public static float[] Light(Spectrum colour)
    {
        var luminance = Observer.Sum(colour).Y;
        return Column(nm => colour.At(nm) / luminance);
    }

    private static WaveBin[] Fill()
    {
        var width = (LastNm - FirstNm) / Steps;
        double Seen(double nm)
        {
            var (x, y, z) = Observer.At(nm);
            return x + y + z;
        }

        var upTo = new double[Steps + 1];
        for (var i = 0; i < Steps; i++)
        {
            upTo[i + 1] = upTo[i] + Seen(FirstNm + (i + 0.5) * width) * width;
        }

        var bins = new WaveBin[WaveBin.Count];
        var step = 0;
        for (var bin = 0; bin < bins.Length; bin++)
        {
            var wanted = (bin + 0.5) / bins.Length * upTo[Steps];
            while (upTo[step + 1] < wanted)
            {
                step++;
            }

            var nm = FirstNm + (step + (wanted - upTo[step]) / (upTo[step + 1] - upTo[step])) * width;
            var density = Seen(nm) / upTo[Steps];
            var (x, y, z) = Observer.At(nm);
            var (red, green, blue) = new Tristimulus(x / density, y / density, z / density).ToLinear();
            bins[bin] = new WaveBin { Nm = (float)nm, Red = (float)red, Green = (float)green, Blue = (float)blue };
        }

        return bins;
    }
}
