using System.Collections.Immutable;
using Linewright.Brief;
using Linewright.Solids.Shapes;

namespace Linewright.Parts;

/// <summary>Front door of the room: builds the solids of a solved line.</summary>
public static class PartsBuilder
{
    /// <summary>Builds every unique part in both states.</summary>
    /// <exception cref="ArgumentException">The design was refused: it has no layout to build.</exception>
    public static Piece Build(LineDesign design)
    {
        ArgumentNullException.ThrowIfNull(design);
        if (design is not { Spec: { } spec, Hinge: { } hinge, Chosen: { } chosen })
        {
            throw new ArgumentException($"the design was refused: {design.Refusal}", nameof(design));
        }

        var link = LinkForm.Derive(spec, hinge, chosen.PitchMm);
        var clasp = ClaspForm.Derive(spec, hinge, Math.Max(link.WidthMm, design.LineWidthMm), chosen.ClaspMm);
        var links = new LinkBuilder(spec, link);
        var box = new BoxBuilder(spec, link, clasp);
        var tongue = new TongueBuilder(spec, link, clasp);
        var parts = ImmutableArray.CreateBuilder<Part>();
        parts.Add(Cast("link", PartRole.Link, chosen.Count, links.Build, links.Features()));
        parts.Add(Cast("box", PartRole.Box, 1, box.Build, box.Features()));
        parts.Add(Cast("tongue", PartRole.Tongue, 1, tongue.Build, tongue.Features()));
        if (spec.Safety)
        {
            var loop = SafetyBuilder.Build(clasp);
            parts.Add(new Part
            {
                Name = "safety",
                Role = PartRole.Safety,
                Count = 1,
                IsCast = true,
                AsSet = loop,
                AsCast = loop.Grown(spec.FinishLossMm),
                Features = [new Feature("safety wire", loop, WireLimitMm, "wire of a figure-of-eight safety 0.7 to 0.9 mm")],
            });
        }

        if (hinge.Kind == HingeKind.PinnedKnuckles)
        {
            var pin = PinBuilder.Build(hinge);
            parts.Add(new Part
            {
                Name = "pin",
                Role = PartRole.Pin,
                Count = chosen.Count + 1,
                IsCast = false,
                AsSet = pin,
                AsCast = pin,
                Features = [],
            });
        }

        return new Piece
        {
            Design = design,
            Hinge = hinge,
            Link = link,
            Clasp = clasp,
            Layout = chosen,
            Parts = parts.ToImmutable(),
            SeatedStone = links.StoneSolid(),
            Stone = spec.Stone,
        };
    }

    // Common practice: figure-of-eight wire 0.7 to 0.9; a hair less is let pass for the polish.
    private const double WireLimitMm = 0.65;

    private static Part Cast(string name, PartRole role, int count, Func<PartState, Solid> build, ImmutableArray<Feature> features) => new()
    {
        Name = name,
        Role = role,
        Count = count,
        IsCast = true,
        AsSet = build(PartState.AsSet),
        AsCast = build(PartState.AsCast),
        Features = features,
    };
}
