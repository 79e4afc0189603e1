using Linewright.Brief;

namespace Linewright.Studio.Pieces;

/// <summary>A brief that cannot be read: everything that is wrong with it, with places.</summary>
public sealed class BriefRefusedException(IReadOnlyList<BriefFault> faults) : Exception("The brief has faults.")
{
    /// <summary>The faults, in the order of the file.</summary>
    public IReadOnlyList<BriefFault> Faults { get; } = faults;
}
