using System.Collections.Immutable;
using Linewright.Solids.Space;

namespace Linewright.Casting;

/// <summary>A tree as the bench builds it: a button, a stem on it, and rings of patterns about the stem. mm; origin in the middle of the button's flat, z along the stem.</summary>
public sealed record CastingTree
{
    /// <summary>The rings, from the button outwards.</summary>
    public required ImmutableArray<TreeRing> Rings { get; init; }

    /// <summary>Which sprued part, and its pose from the upright mesh's frame to the tree's.</summary>
    public required ImmutableArray<(int Part, Pose Pose)> Places { get; init; }

    /// <summary>Diameter of the stem.</summary>
    public required double StemMm { get; init; }

    /// <summary>Length of the stem over the button.</summary>
    public required double StemLengthMm { get; init; }

    /// <summary>Radius of the button, half a ball.</summary>
    public required double ButtonMm { get; init; }

    /// <summary>From the button's flat to the highest part.</summary>
    public required double HeightMm { get; init; }

    /// <summary>Diameter of the cylinder that holds it.</summary>
    public required double WidthMm { get; init; }

    /// <summary>Volume of the stem, mm3.</summary>
    public double StemMm3 => Math.PI / 4 * StemMm * StemMm * StemLengthMm;

    /// <summary>Volume of the button, mm3.</summary>
    public double ButtonMm3 => 2.0 / 3 * Math.PI * ButtonMm * ButtonMm * ButtonMm;
}
