using System.CommandLine;
using Linewright.Tolerance;

namespace Linewright.Cli;

/// <summary>tolerance: draws a lot of such pieces and says how many come out well.</summary>
internal static class ToleranceVerb
{
    public static Command Create(Desk desk)
    {
        var pieces = new Option<int>("--pieces")
        {
            Description = FormattableString.Invariant($"How many pieces to draw, 100 to {ToleranceStudy.MostPieces}; {ToleranceStudy.UsualPieces} where not given."),
            HelpName = "N",
            DefaultValueFactory = _ => ToleranceStudy.UsualPieces,
        };
        pieces.Validators.Add(given => Within(given, pieces.Name, 100, ToleranceStudy.MostPieces));
        var seed = new Option<long>("--seed")
        {
            Description = "Which lot to draw; the same seed draws the same lot.",
            HelpName = "N",
            DefaultValueFactory = _ => ToleranceStudy.UsualSeed,
        };
        seed.Validators.Add(given => Within(given, seed.Name, 0, long.MaxValue));
        var verb = Verb.Create(
            "tolerance",
            "Draws a lot of pieces as the process scatters them: length, joints, clasp and walls.",
            desk,
            (parse, brief, stage, stop) => desk.Workbench.Tolerance(brief, parse.GetValue(pieces), parse.GetValue(seed), stage, stop),
            (_, tables, report) =>
            {
                tables.Summary(report);
                tables.Tolerance(report);
            });
        verb.Options.Add(pieces);
        verb.Options.Add(seed);
        return verb;
    }

    private static void Within(System.CommandLine.Parsing.OptionResult given, string name, long low, long high)
    {
        // What is no whole number at all is the parser's to say.
        if (given.Tokens is [var token] && long.TryParse(token.Value, System.Globalization.CultureInfo.InvariantCulture, out var value) && (value < low || value > high))
        {
            given.AddError(FormattableString.Invariant($"{name}: read {value}, expected a whole number from {low} to {high}"));
        }
    }
}
