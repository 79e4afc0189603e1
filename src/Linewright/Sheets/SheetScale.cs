using System.Globalization;

namespace Linewright.Sheets;

/// <summary>A scale of drawing: how large a millimetre of the piece is on the paper.</summary>
/// <param name="Factor">Millimetres on the paper for one of the piece.</param>
internal readonly record struct SheetScale(double Factor)
{
    // Standard: ISO 5455: 1, 2 and 5 and their tenfolds, enlarged or reduced; the largest first.
    private static readonly double[] Standard = [50, 20, 10, 5, 2, 1, 0.5, 0.2, 0.1, 0.05, 0.02, 0.01];

    /// <summary>All scales, the largest first.</summary>
    public static IEnumerable<SheetScale> All => Standard.Select(factor => new SheetScale(factor));

    /// <summary>The next smaller scale; the smallest has none and is its own.</summary>
    public SheetScale Smaller
    {
        get
        {
            var factor = Factor;
            return All.FirstOrDefault(scale => scale.Factor < factor, this);
        }
    }

    /// <summary>As it stands in the title block: 10:1, 1:2.</summary>
    public string Text => Factor >= 1
        ? string.Create(CultureInfo.InvariantCulture, $"{Factor:0}:1")
        : string.Create(CultureInfo.InvariantCulture, $"1:{1 / Factor:0}");

    /// <summary>The largest scale at which something fits; the smallest where nothing does.</summary>
    public static SheetScale Largest(Func<SheetScale, bool> fits, double most = 50)
    {
        foreach (var scale in All.Where(scale => scale.Factor <= most))
        {
            if (fits(scale))
            {
                return scale;
            }
        }

        return All.Last();
    }
}
