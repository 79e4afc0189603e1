using System.Collections.Immutable;
using Linewright.Parts;

namespace Linewright.Casting;

/// <summary>What a piece holds of metal and how it is cast: every cast part with its sprue, the plates, the trees, the metal to weigh out.</summary>
/// <remarks>
/// Planned on meshes as coarse as weighing asks for, the same for a quote as for a casting file, so that there is one figure of the
/// metal to melt. <see cref="CastingPlans.Patterns"/> meshes for the printer what was planned here.
/// </remarks>
public sealed record CastingPlan
{
    /// <summary>The piece.</summary>
    public required Piece Piece { get; init; }

    /// <summary>What each part weighs, in the order of the piece's parts.</summary>
    public required ImmutableArray<WeighedPart> Weights { get; init; }

    /// <summary>Cast parts with their sprues, in the order of the piece's parts.</summary>
    public required ImmutableArray<SpruedPart> Parts { get; init; }

    /// <summary>Plates of patterns.</summary>
    public required ImmutableArray<PrintPlate> Plates { get; init; }

    /// <summary>Trees of waxes or prints.</summary>
    public required ImmutableArray<CastingTree> Trees { get; init; }

    /// <summary>Metal to weigh out, mm3: parts, sprues, stems, buttons; parts that have no sprue by rule alone.</summary>
    public required double MetalMm3 { get; init; }

    /// <summary>What the report says.</summary>
    public required CastingReport Report { get; init; }
}
