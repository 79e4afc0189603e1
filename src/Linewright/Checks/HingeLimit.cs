using System.Collections.Immutable;

namespace Linewright.Checks;

/// <summary>How far a link turns one way, and what ends it.</summary>
/// <param name="Angle">Radians, 0 or more.</param>
/// <param name="Touches">False where nothing met as far as was looked.</param>
/// <param name="Words">What meets, in the trade's words; empty where nothing does.</param>
/// <param name="Spots">The two places that meet, each in its own part's frame.</param>
public sealed record HingeLimit(double Angle, bool Touches, string Words, ImmutableArray<Spot> Spots);
