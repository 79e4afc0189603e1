using Linewright.Parts;

namespace Linewright.Studio.Pieces;

/// <summary>A sound brief for which no line closes.</summary>
public sealed class LineRefusedException(LineDesign design) : Exception(design?.Refusal)
{
    /// <summary>The longest shorter measure that would work, mm.</summary>
    public double? NearestShorterMm => design.Plan?.Refusal?.NearestShorterMm;

    /// <summary>The shortest longer measure that would work, mm.</summary>
    public double? NearestLongerMm => design.Plan?.Refusal?.NearestLongerMm;
}
