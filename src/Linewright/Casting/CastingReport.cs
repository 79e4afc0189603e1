namespace Linewright.Casting;

/// <summary>The way to the printer and into the flask, as report.json holds it. mm, g.</summary>
/// <param name="Route">Key of the chain of steps.</param>
/// <param name="PatternScale">How much the patterns are enlarged.</param>
/// <param name="PolishedAllowanceMm">How far polished faces stand out as cast; kept faces do not.</param>
/// <param name="Steps">The steps in their order.</param>
/// <param name="Sprues">A row a cast part.</param>
/// <param name="Plates">A row a plate.</param>
/// <param name="Trees">A row a tree.</param>
/// <param name="MetalToWeighOutG">All trees together: parts, sprues, stems, buttons; parts that hang on none, because no face takes a sprue, without one.</param>
/// <param name="PatternsG">What all patterns with their sprues weigh in resin or wax, stems and buttons not counted.</param>
/// <param name="MetalPerPattern">Metal for a gram of pattern: densities, and what casting shrinks.</param>
/// <param name="Notes">What the rules do not know, and what a person must see to.</param>
public sealed record CastingReport(
    string Route,
    double PatternScale,
    double PolishedAllowanceMm,
    IReadOnlyList<StepReport> Steps,
    IReadOnlyList<SprueReport> Sprues,
    IReadOnlyList<PlateReport> Plates,
    IReadOnlyList<TreeReport> Trees,
    double MetalToWeighOutG,
    double PatternsG,
    double MetalPerPattern,
    IReadOnlyList<string> Notes);
