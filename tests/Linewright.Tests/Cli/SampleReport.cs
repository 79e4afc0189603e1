using System.Text;
using Linewright.Brief;
using Linewright.Checks;
using Linewright.Making;
using Linewright.Materials;

namespace Linewright.Tests.Cli;

/// <summary>A report with something in every place, made up for the tests of printing and writing.</summary>
internal static class SampleReport
{
    public const string Brief = """
        {
          "name": "Harbour lights",
          "stone": { "cut": "round", "species": "diamond", "diameter_mm": 3.0 },
          "metal": "gold-750-white-pd",
          "length": { "laid_flat_mm": 178.0 }
        }
        """;

    public static Report Of(ResolvedBrief brief, params IEnumerable<Verdict> verdicts) => new(
        brief,
        new LayoutReport(
            49, 3.42857142857, 0.42857142857, 10.0, 178.0, 163.1234567891, 25.9619, 1.85, 7.071, 0.05,
            [
                new CandidateReport(49, 3.42857142857, 0.42857142857, 10.0, 4.9686, 163.12, 7.071, "The gap is nearest to the one preferred and the clasp holds a tongue that lasts."),
                new CandidateReport(48, 3.45, 0.45, 12.4, 4.8672, 163.05, 7.12, "One stone fewer; the clasp grows by 2.4 mm."),
            ]),
        [
            new PartReport("link", "parts/link.stl", 48, true, 12.345678912, 61.5, 48210, 3, 4.9, 10.1, 0.16, 0.2),
            new PartReport("box", "parts/box.stl", 1, true, 98.1, 402.25, 31002, 1, 4.2, 90.2, 1.461, 1.589),
        ],
        new StonesReport(49, 0.1014, 0.1020, 4.9686),
        new WeightsReport(11.2, 12.345, 19.752, [new AlloyWeightReport("silver-925", 7.3, 8.05, 12.88), new AlloyWeightReport("gold-750-white-pd", 11.2, 12.345, 19.752)]),
        [.. verdicts.Select(Finding)],
        ["The fineness is nominal, to be assayed."]);

    public static ResolvedBrief Resolved(string text = Brief) => BriefDefaults.Resolve(BriefReader.Read(Encoding.UTF8.GetBytes(text), "b").Brief!);

    private static Finding Finding(Verdict verdict) => verdict switch
    {
        Verdict.Fail => new Finding("smallest-wall", verdict, "link, upper rail", 0.62, 0.70, "mm", "Casting houses' rules for gold", Marks.CommonPractice, "Raise link.rail_mm by 0.1 mm, or open link.opening_percent less; the rail is thinnest beside the claw."),
        Verdict.Caution => new Finding("hinge-play", verdict, "line", 2.4, 2.0, "mm", "A line that sags by more than a stone looks loose", Marks.Assumed, "Lower hinge.diametral_clearance_mm to 0.08."),
        _ => new Finding("stone-gap", verdict, "all hinges", 0.21, 0.05, "mm", "Stones must never strike each other", Marks.CommonPractice, ""),
    };
}
