using System.Collections.Immutable;
using Linewright.Solids.Shapes;

namespace Linewright.Parts;

/// <summary>One unique part of the line: its solid in both states, and how often the line has it.</summary>
/// <remarks>
/// The frame is the link's own for a link, the clasp's (origin on the box's bar axis at the skin, x towards the
/// tongue's eye) for box, tongue and safety, the pin's own axis for a pin.
/// </remarks>
public sealed record Part
{
    /// <summary>File name and heading: link, box, tongue, safety, pin.</summary>
    public required string Name { get; init; }

    /// <summary>What it does.</summary>
    public required PartRole Role { get; init; }

    /// <summary>How many the line has.</summary>
    public required int Count { get; init; }

    /// <summary>False for a drawn wire, which is cut to length and neither cast nor polished.</summary>
    public required bool IsCast { get; init; }

    /// <summary>As worn.</summary>
    public required Solid AsSet { get; init; }

    /// <summary>As it leaves the casting, before compensation for shrinkage.</summary>
    public required Solid AsCast { get; init; }

    /// <summary>Regions with their wall limits, as set; none for a drawn wire.</summary>
    public required ImmutableArray<Feature> Features { get; init; }
}
