using Linewright.Solids.Space;

namespace Linewright.Layout;

/// <summary>The line as rigid pieces between hinge axes: equal links and one clasp, taut.</summary>
/// <param name="Count">Stone-set links, at least 2.</param>
/// <param name="PitchMm">Length of a link, hinge axis to hinge axis.</param>
/// <param name="ClaspMm">Length of the clasp, hinge axis to hinge axis.</param>
/// <param name="HingeHeightMm">Hinge axes over the skin, 0 or more.</param>
public sealed record HingeChain(int Count, double PitchMm, double ClaspMm, double HingeHeightMm)
{
    /// <summary>The least number of links that closes to a ring with a clasp.</summary>
    public const int LeastCount = 2;

    /// <summary>Length through all hinge axes.</summary>
    public double LaidFlatMm => Count * PitchMm + ClaspMm;

    /// <summary>Refuses lengths that no line can have.</summary>
    /// <exception cref="ArgumentOutOfRangeException">A length is no number or not above 0, or there are too few links.</exception>
    internal HingeChain Checked()
    {
        Guard.InRange(Count, LeastCount, int.MaxValue, nameof(Count));
        Guard.Positive(PitchMm, nameof(PitchMm));
        Guard.Positive(ClaspMm, nameof(ClaspMm));
        Guard.InRange(HingeHeightMm, 0, double.MaxValue, nameof(HingeHeightMm));
        return this;
    }
}
