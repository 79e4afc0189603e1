using System.Diagnostics.CodeAnalysis;

namespace Linewright.Stones;

/// <summary>A stone, or why its proportions do not make one.</summary>
/// <param name="Status">Sound, or what stands in the way.</param>
/// <param name="Stone">Null unless sound.</param>
/// <param name="Reason">One sentence with the numbers; empty where sound.</param>
public sealed record StoneResult(StoneStatus Status, Stone? Stone, string Reason)
{
    /// <summary>True where there is a stone.</summary>
    [MemberNotNullWhen(true, nameof(Stone))]
    public bool IsSound => Status == StoneStatus.Sound && Stone is not null;
}
