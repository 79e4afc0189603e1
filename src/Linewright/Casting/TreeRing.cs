namespace Linewright.Casting;

/// <summary>A ring of parts about the stem, evenly spaced.</summary>
/// <param name="Part">Name of the parts; several names where the ring is mixed.</param>
/// <param name="Count">How many.</param>
/// <param name="HeightMm">Of the sprues' feet over the button's flat.</param>
/// <param name="FirstDeg">Where the first stands, about the stem.</param>
/// <param name="EveryDeg">From one to the next.</param>
public sealed record TreeRing(string Part, int Count, double HeightMm, double FirstDeg, double EveryDeg);
