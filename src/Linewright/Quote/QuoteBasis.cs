using System.Collections.Immutable;
using Linewright.Brief;
using Linewright.Making;
using Linewright.Parts;

namespace Linewright.Quote;

/// <summary>All that a quote needs to know of a piece: weights as a balance reads them, and counts.</summary>
/// <remarks>
/// Metal is weighed to 0.01 g, half upwards, stones to 0.0001 ct each; from there on every figure is an exact decimal, so that a
/// quote can be worked out again by hand.
/// </remarks>
/// <param name="Name">Of the piece.</param>
/// <param name="Metal">Key of the alloy.</param>
/// <param name="Hinge">How the joints are built.</param>
/// <param name="CastPartsG">Finished metal of all that was cast.</param>
/// <param name="DrawnG">Metal of drawn pins.</param>
/// <param name="CastG">The same parts as they leave the casting.</param>
/// <param name="MeltG">To be melted, with sprues and button.</param>
/// <param name="Links">Stone-set links.</param>
/// <param name="Joints">Hinges, those to the clasp included.</param>
/// <param name="Castings">Cast parts, each counted.</param>
/// <param name="Pins">Drawn pins.</param>
/// <param name="RhodiumUm">Plate, micrometres; 0 is none.</param>
/// <param name="LaidFlatMm">Length, closed and taut.</param>
/// <param name="PitchMm">From stone to stone.</param>
/// <param name="ClaspMm">The clasp's share of the length.</param>
/// <param name="Stones">The stone order.</param>
public sealed record QuoteBasis(
    string Name,
    string Metal,
    HingeKind Hinge,
    decimal CastPartsG,
    decimal DrawnG,
    decimal CastG,
    decimal MeltG,
    int Links,
    int Joints,
    int Castings,
    int Pins,
    decimal RhodiumUm,
    double LaidFlatMm,
    double PitchMm,
    double ClaspMm,
    StoneOrder Stones)
{
    private const int GramDecimals = 2;

    /// <summary>Trees that the castings hang on, and flasks that they fill.</summary>
    public int Trees { get; init; } = 1;

    /// <summary>Metal of the finished piece.</summary>
    public decimal FinishedG => CastPartsG + DrawnG;

    /// <summary>Of a design and its weighed parts.</summary>
    /// <exception cref="ArgumentException">The design was refused.</exception>
    public static QuoteBasis Of(LineDesign design, ImmutableArray<WeighedPart> weights)
    {
        ArgumentNullException.ThrowIfNull(design);
        if (design is not { Chosen: { } chosen, Hinge: { } hinge })
        {
            throw new ArgumentException($"the design was refused: {design.Refusal}", nameof(design));
        }

        var brief = design.Brief;
        decimal Weigh(Func<WeighedPart, double> mm3) => OnTheBalance(weights.Sum(part => brief.Alloy.MassOf(mm3(part)).Value * part.Part.Count));
        var cast = Weigh(part => part.CastMm3);
        var castings = weights.Where(part => part.Part.IsCast).Sum(part => part.Part.Count);
        return new QuoteBasis(
            brief.Name, brief.Metal, hinge.Kind,
            Weigh(part => part.Part.IsCast ? part.FinishedMm3 : 0), Weigh(part => part.Part.IsCast ? 0 : part.FinishedMm3), cast,
            decimal.Round(cast * (1 + (decimal)brief.Process.TreePercent / 100), GramDecimals, MidpointRounding.AwayFromZero),
            chosen.Count, chosen.Count + 1, castings,
            weights.Where(part => part.Part.Role == PartRole.Pin).Sum(part => part.Part.Count),
            (decimal)brief.Finish.RhodiumUm, chosen.LaidFlatMm, chosen.PitchMm, chosen.ClaspMm, StoneOrders.Of(design))
        {
            Trees = (castings + brief.Process.PartsPerTree - 1) / brief.Process.PartsPerTree,
        };
    }

    /// <summary>How many there are of what prices are counted by.</summary>
    public int Count(CountOf what) => what switch
    {
        CountOf.Link => Links,
        CountOf.Joint => Joints,
        CountOf.Stone => Stones.Count,
        CountOf.Casting => Castings,
        CountOf.Pin => Pins,
        _ => 1,
    };

    // To 0.01 g, half upwards. Common practice: a balance for precious metal reads so.
    private static decimal OnTheBalance(double grams) => decimal.Round((decimal)grams, GramDecimals, MidpointRounding.AwayFromZero);
}
