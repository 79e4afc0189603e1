namespace Linewright.Parts;

/// <summary>How two links are joined.</summary>
public enum HingeKind
{
    /// <summary>The bar is cast with its link; the neighbour's eye is cast open, closed over the bar and welded.</summary>
    EyeOverBar,

    /// <summary>A knuckle between two cheeks, a drawn wire through all three.</summary>
    PinnedKnuckles,
}
