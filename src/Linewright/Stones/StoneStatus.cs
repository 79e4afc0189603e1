namespace Linewright.Stones;

/// <summary>Whether a set of proportions makes a stone, and which facet stands in the way where it does not.</summary>
public enum StoneStatus
{
    /// <summary>Every facet is there.</summary>
    Sound,

    /// <summary>A ratio or an angle is no number, or outside what any stone can have.</summary>
    OutOfRange,

    /// <summary>Stars are as steep as the bezel mains, or steeper: the table corners would not stand out.</summary>
    StarsTooSteep,

    /// <summary>Upper halves are as flat as the bezel mains, or flatter: the kites would not be kites.</summary>
    UpperHalvesTooFlat,

    /// <summary>Lower halves are as flat as the pavilion mains, or flatter.</summary>
    LowerHalvesTooFlat,

    /// <summary>The girdle is thinner than its scallops are deep, so it ends in a knife edge in the valleys.</summary>
    KnifeEdgeGirdle,

    /// <summary>The culet is so large that it takes the lower halves' tips away.</summary>
    CuletTooLarge,

    /// <summary>A facet vanished when the planes were cut, for a reason none of the others names.</summary>
    FacetLost,
}
