using Linewright.Brief;
using Linewright.Casting;
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
/// <param name="MeltG">To be melted: parts, sprues, stems and buttons, as the casting plan weighs out.</param>
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

    /// <summary>Printed plates that the patterns stand on.</summary>
    public int Plates { get; init; } = 1;

    /// <summary>Metal of the finished piece.</summary>
    public decimal FinishedG => CastPartsG + DrawnG;

    /// <summary>Of a piece as it was weighed and its casting planned.</summary>
    public static QuoteBasis Of(CastingPlan plan)
    {
        ArgumentNullException.ThrowIfNull(plan);
        var (design, weights) = (plan.Piece.Design, plan.Weights);
        var (chosen, brief) = (plan.Piece.Layout, design.Brief);
        decimal Weigh(Func<WeighedPart, double> mm3) => OnTheBalance(weights.Sum(part => brief.Alloy.MassOf(mm3(part)).Value * part.Part.Count));
        var castings = weights.Where(part => part.Part.IsCast).Sum(part => part.Part.Count);
        return new QuoteBasis(
            brief.Name, brief.Metal, plan.Piece.Hinge.Kind,
            Weigh(part => part.Part.IsCast ? part.FinishedMm3 : 0), Weigh(part => part.Part.IsCast ? 0 : part.FinishedMm3),
            Weigh(part => part.CastMm3), OnTheBalance(plan.Report.MetalToWeighOutG),
            chosen.Count, chosen.Count + 1, castings,
            weights.Where(part => part.Part.Role == PartRole.Pin).Sum(part => part.Part.Count),
            (decimal)brief.Finish.RhodiumUm, chosen.LaidFlatMm, chosen.PitchMm, chosen.ClaspMm, StoneOrders.Of(design))
        {
            // As planned; parts that no face takes a sprue of, or that are too large for the plate, are hung and printed all the same.
            Trees = (castings + brief.Process.PartsPerTree - 1) / brief.Process.PartsPerTree,
            Plates = Math.Max(1, plan.Plates.Length),
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
