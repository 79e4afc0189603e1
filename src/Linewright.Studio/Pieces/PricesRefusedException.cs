using Linewright.Brief;
using Linewright.Quote;

namespace Linewright.Studio.Pieces;

/// <summary>A price list that cannot be read, or one that lacks what a file needs. Never both.</summary>
public sealed class PricesRefusedException(string message, IReadOnlyList<BriefFault> faults, IReadOnlyList<MissingPrice> missing) : Exception(message)
{
    /// <summary>What is wrong with it, in the order of the file.</summary>
    public IReadOnlyList<BriefFault> Faults { get; } = faults;

    /// <summary>What it must still say.</summary>
    public IReadOnlyList<MissingPrice> Missing { get; } = missing;

    /// <summary>It cannot be read.</summary>
    public static PricesRefusedException Of(IReadOnlyList<BriefFault> faults)
    {
        ArgumentNullException.ThrowIfNull(faults);
        return new PricesRefusedException(faults[0].Describe("prices"), faults, []);
    }

    /// <summary>Prices are missing: there is nothing to write.</summary>
    public static PricesRefusedException Of(IReadOnlyList<MissingPrice> missing)
    {
        ArgumentNullException.ThrowIfNull(missing);
        return new PricesRefusedException(string.Join("; ", missing.Select(price => $"{price.Path}: nothing there, expected {price.Needed}")), [], missing);
    }
}
