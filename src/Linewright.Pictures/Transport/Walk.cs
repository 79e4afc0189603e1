using Linewright.Pictures.Rays;

namespace Linewright.Pictures.Transport;

/// <summary>A sample under way. Kept apart from the loop, so that a card's lanes can begin their next one while others still walk.</summary>
internal struct Walk
{
    public PathState Path;
    public SampleStream Numbers;
    public SampleOutcome Seen;

    /// <summary>Things met so far.</summary>
    public int Depth;

    /// <summary>1: the first thing was a stone, and the light that it threw back is still to be followed.</summary>
    public int IsKept;

    /// <summary>The path as it came to that stone.</summary>
    public PathState Kept;

    /// <summary>Where it met it.</summary>
    public Encounter KeptHit;
}
