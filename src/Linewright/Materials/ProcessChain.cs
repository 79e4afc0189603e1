using System.Collections.Immutable;

namespace Linewright.Materials;

/// <summary>The steps from the drawing to the finished part, run forwards and backwards. mm.</summary>
/// <remarks>
/// Forwards each step scales the part and then takes its loss from the faces: x becomes s x - l. Backwards that gives the
/// pattern: the finished part grown by the losses, each carried through the scales of the steps after it, and all
/// divided by the product of the scales. Derivation: docs/notes/tolerance.md.
/// </remarks>
public sealed record ProcessChain
{
    private ProcessChain(ProcessRoute route, ImmutableArray<ChainStep> steps) => (Route, Steps) = (route, steps);

    /// <summary>The route's row.</summary>
    public ProcessRoute Route { get; }

    /// <summary>In the order in which they are done.</summary>
    public ImmutableArray<ChainStep> Steps { get; }

    /// <summary>A finished length over the same length on the pattern, losses aside.</summary>
    public double Scale => Steps.Aggregate(1.0, (scale, step) => scale * step.Scale);

    /// <summary>How much the pattern is enlarged.</summary>
    public double PatternScale => 1 / Scale;

    /// <summary>Density of what is burnt out, resin or wax, g/cm3.</summary>
    public double PatternDensityGPerCm3 => Steps.Last(step => step.Row.PatternDensityGPerCm3 is not null).Row.PatternDensityGPerCm3!.Value;

    /// <summary>A finished length over the same length on what is burnt out: what the last pattern still shrinks by.</summary>
    public double CastScale => Steps.SkipWhile(step => step.Row.ShrinkPercent is not null).Aggregate(1.0, (scale, step) => scale * step.Scale);

    /// <summary>Linear shrinkage over the whole chain, %.</summary>
    public double ShrinkPercent => Math.Round(100 * (1 - Scale), 9); // so that 0.6 comes back as 0.6

    /// <summary>The row of a route for a metal, as the tables have it.</summary>
    /// <param name="route">Key of the route.</param>
    /// <param name="castShrinkPercent">What the metal's family shrinks in casting.</param>
    public static ProcessChain Of(string route, double castShrinkPercent)
    {
        var row = MaterialTables.Routes.Find(route);
        return new ProcessChain(
            row,
            [.. row.Steps.Select(MaterialTables.Steps.Find).Select(step => new ChainStep(step, 1 - (step.ShrinkPercent ?? castShrinkPercent) / 100, step.PolishedLossMm))]);
    }

    /// <summary>The same route where a shop has measured the whole: the casting takes up what is left of the shrinkage, the finishing steps share the loss as before.</summary>
    /// <param name="shrinkPercent">Linear shrinkage from pattern to metal.</param>
    /// <param name="finishLossMm">Taken from a polished face in all.</param>
    public ProcessChain WithTotals(double shrinkPercent, double finishLossMm)
    {
        var others = Steps.Where(step => step.Row.ShrinkPercent is not null).Aggregate(1.0, (scale, step) => scale * step.Scale);
        var lost = Steps.Sum(step => step.Row.PolishedLossMm);
        return new ProcessChain(Route, [.. Steps.Select(step => step with
        {
            Scale = step.Row.ShrinkPercent is null ? (1 - shrinkPercent / 100) / others : step.Scale,
            PolishedLossMm = lost > 0 ? step.Row.PolishedLossMm / lost * finishLossMm : 0,
        })]);
    }

    /// <summary>How far a face of a kind stands out from the finished one before anything is lost, in finished size.</summary>
    public double AllowanceMm(FaceKind face)
    {
        double after = 1, allowance = 0;
        for (var i = Steps.Length - 1; i >= 0; i--)
        {
            allowance += Steps[i].LossMm(face) * after;
            after *= Steps[i].Scale;
        }

        return Math.Round(allowance, 9); // so that 0.02 + 0.08 is 0.10 to the last digit
    }

    /// <summary>A length between two faces of a kind, carried from the pattern through every step.</summary>
    /// <param name="patternMm">The length on the pattern.</param>
    /// <param name="face">Both of its faces.</param>
    public double Forward(double patternMm, FaceKind face) => Steps.Aggregate(patternMm, (length, step) => step.Scale * length - 2 * step.LossMm(face));

    /// <summary>Standard deviation of the scale of a tree, as a part of a length: root of the sum of squares.</summary>
    public double ScaleSpread => Root(step => step.ScaleSpreadPercent) / 100;

    /// <summary>Standard deviation of where one face comes to lie, mm.</summary>
    public double FaceSpreadMm => Root(step => step.FaceSpreadMm);

    /// <summary>Standard deviation of a size between two faces as cast, mm.</summary>
    public double SizeSpreadMm => Math.Sqrt(2) * FaceSpreadMm;

    /// <summary>Standard deviation of where all faces of a tree come to lie together, mm.</summary>
    public double CommonFaceSpreadMm => Root(step => step.CommonFaceSpreadMm);

    /// <summary>Standard deviation of what finishing takes from a polished face, mm.</summary>
    public double LossSpreadMm => Root(step => step.LossSpreadMm);

    private double Root(Func<ProcessStep, double> spread) => Math.Sqrt(Steps.Sum(step => spread(step.Row) * spread(step.Row)));
}
