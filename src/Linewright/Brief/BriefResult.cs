namespace Linewright.Brief;

/// <summary>What came of reading a brief: the brief, or everything that is wrong with it. Never both.</summary>
public sealed record BriefResult(string FileName, DesignBrief? Brief, IReadOnlyList<BriefFault> Faults)
{
    /// <summary>The faults as messages, in the order of the file.</summary>
    public IEnumerable<string> Messages => Faults.Select(fault => fault.Describe(FileName));
}
