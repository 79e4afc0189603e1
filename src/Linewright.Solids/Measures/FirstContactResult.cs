namespace Linewright.Solids.Measures;

/// <summary>How far one part moves before it meets another, and what meets.</summary>
/// <param name="Touches">True where the gap fell to the clearance asked for; false where the whole way was free.</param>
/// <param name="Angle">The parameter of contact, or the limit where all was free; radians where the motion is a turn.</param>
/// <param name="Nearest">The pair in contact, or the nearest pair met on the way; in the outer frame.</param>
/// <param name="NearestAngle">Where on the way <paramref name="Nearest"/> was measured; the contact's angle where there is contact.</param>
public readonly record struct FirstContactResult(bool Touches, double Angle, ClearanceResult Nearest, double NearestAngle)
{
    /// <summary>Smallest gap on the way, mm.</summary>
    public double LeastGapMm => Nearest.GapMm;
}
