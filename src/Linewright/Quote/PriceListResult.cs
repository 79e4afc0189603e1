using Linewright.Brief;

namespace Linewright.Quote;

/// <summary>What came of reading a price list: the list, or everything that is wrong with it. Never both.</summary>
public sealed record PriceListResult(string FileName, PriceList? List, IReadOnlyList<BriefFault> Faults)
{
    /// <summary>The faults as messages, in the order of the file.</summary>
    public IEnumerable<string> Messages => Faults.Select(fault => fault.Describe(FileName));
}
