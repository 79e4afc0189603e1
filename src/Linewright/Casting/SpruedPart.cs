using Linewright.Parts;
using Linewright.Solids.Shapes;
using Linewright.Solids.Space;

namespace Linewright.Casting;

/// <summary>A part as cast with its sprue, one body, and how the two freeze. mm; the part's frame, before it is enlarged.</summary>
public sealed record SpruedPart
{
    /// <summary>The part.</summary>
    public required Part Part { get; init; }

    /// <summary>Where the sprue stands; null where no face will do, and the caster must choose.</summary>
    public required SprueSite? Site { get; init; }

    /// <summary>Diameter of the sprue where it leaves the stem.</summary>
    public required double SprueMm { get; init; }

    /// <summary>Diameter of the sprue where it meets the part.</summary>
    public required double GateMm { get; init; }

    /// <summary>From the gate to the stem.</summary>
    public required double LengthMm { get; init; }

    /// <summary>Volume of the part as cast over its surface.</summary>
    public required double ModulusMm { get; init; }

    /// <summary>Diameter of the largest ball in the part.</summary>
    public required double ThickestMm { get; init; }

    /// <summary>Volume of the part as cast, mm3.</summary>
    public required double PartMm3 { get; init; }

    /// <summary>The part and its sprue in one.</summary>
    public required Solid Solid { get; init; }

    /// <summary>Volume of part and sprue once cast, mm3.</summary>
    public required double CastMm3 { get; init; }

    /// <summary>Turns the enlarged mesh so that its sprue stands on the plane z = 0, its foot in the origin.</summary>
    public required Pose Upright { get; init; }

    /// <summary>Box of part and sprue, enlarged and upright; no less than any mesh of them.</summary>
    public required Bounds UprightBox { get; init; }

    /// <summary>Box of the part alone, upright.</summary>
    public required Bounds PartBox { get; init; }

    /// <summary>Box of the sprue alone, upright: from the stem to the gate.</summary>
    public required Bounds SprueBox { get; init; }

    /// <summary>Diameter of a bar as thick as what the gate meets of the part.</summary>
    public double FedMm => Site is null ? 0 : Math.Min(GateMm, Site.ContactMm);

    /// <summary>Modulus of the gate over that of the part: the part is fed where this is at least <see cref="Modulus.FeedRatio"/>; 0 without a gate.</summary>
    public double FeedRatio => Site is null ? 0 : Modulus.OfBar(FedMm) / ModulusMm;
}
