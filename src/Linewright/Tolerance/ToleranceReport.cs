namespace Linewright.Tolerance;

/// <summary>What a lot of pieces of one line would be like, were they made as the brief's process makes them.</summary>
/// <remarks>The same line, number of pieces and seed give the same report, whatever the number of threads.</remarks>
/// <param name="Pieces">How many were drawn.</param>
/// <param name="Seed">Which lot.</param>
/// <param name="Trees">Trees that one piece is cast on.</param>
/// <param name="Length">Closed length.</param>
/// <param name="RunsFree">Pieces in which every joint runs free without fitting.</param>
/// <param name="ClaspCloses">Pieces whose tongue goes in and comes out.</param>
/// <param name="ClaspHolds">Pieces whose catch holds.</param>
/// <param name="Yield">Pieces that run free, close and hold: none need go back to the bench.</param>
/// <param name="WallsHold">Pieces in which no wall as cast is under its limit, which is one for drawings.</param>
/// <param name="WallsAccepted">Pieces in which none is so far under it that the casting would be refused.</param>
/// <param name="Gap">The hinge gaps with which 99 of 100 run free.</param>
/// <param name="Sensitivity">Each tolerance, the one that costs most first.</param>
/// <param name="MattersMostForYield">The tolerance that costs the most pieces; null where none costs any.</param>
/// <param name="MattersMostForLength">The tolerance with the largest share of the length's variance.</param>
/// <param name="Walls">Walls that can fall under their limits, the most often first.</param>
/// <param name="Reserves">How much thicker walls would be drawn for 99 of 100 pieces to have none refused, and none under its limit.</param>
/// <param name="Notes">What the study does not know.</param>
public sealed record ToleranceReport(
    int Pieces,
    long Seed,
    int Trees,
    LengthSpread Length,
    Chance RunsFree,
    Chance ClaspCloses,
    Chance ClaspHolds,
    Chance Yield,
    Chance WallsHold,
    Chance WallsAccepted,
    HingeGap Gap,
    IReadOnlyList<Sensitivity> Sensitivity,
    ToleranceSource? MattersMostForYield,
    ToleranceSource MattersMostForLength,
    IReadOnlyList<WallSpread> Walls,
    IReadOnlyList<WallReserve> Reserves,
    IReadOnlyList<string> Notes);
