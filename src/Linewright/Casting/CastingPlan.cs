using System.Collections.Immutable;

namespace Linewright.Casting;

/// <summary>How a piece goes to the printer and into the flask: every cast part with its sprue, the plates, the trees.</summary>
public sealed record CastingPlan
{
    /// <summary>Cast parts with their sprues, in the order of the piece's parts.</summary>
    public required ImmutableArray<SpruedPart> Parts { get; init; }

    /// <summary>Plates of patterns.</summary>
    public required ImmutableArray<PrintPlate> Plates { get; init; }

    /// <summary>Trees of waxes or prints.</summary>
    public required ImmutableArray<CastingTree> Trees { get; init; }

    /// <summary>What the report says.</summary>
    public required CastingReport Report { get; init; }
}
