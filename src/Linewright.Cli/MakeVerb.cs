using System.CommandLine;
using Linewright.Brief;
using Linewright.Delivery;
using Linewright.Paper;
using Linewright.Quote;

namespace Linewright.Cli;

/// <summary>make: writes the parts, the assembly and the report into a folder, all or nothing.</summary>
internal static class MakeVerb
{
    public static Command Create(Desk desk)
    {
        var prices = new PriceArguments(isRequired: false);
        var page = new PageArguments("The paper of the technical sheet and of the client's page: a4, the sheet in first angle, or letter, in third.", hasDate: true);
        var verb = FolderVerb.Create(
            "make",
            "Writes the castable parts, the assembly and the report into a folder.",
            desk,
            parse =>
            {
                var list = prices.Read(parse);
                var (paper, date) = (page.Paper(parse), page.Date(parse));
                return (brief, folder, stage, stop) =>
                {
                    Price(parse, prices, list, paper, desk, brief, folder, stage, stop);
                    return desk.Workbench.Make(brief, paper, date, folder, stage, stop);
                };
            },
            (tables, report) =>
            {
                tables.Summary(report);
                tables.Parts(report);
                tables.Weights(report);
                tables.Findings(report, withPassed: false);
            });
        prices.AddTo(verb);
        page.AddTo(verb);
        return verb;
    }

    // Before the work and not after it: a list with a hole is told at once.
    private static void Price(
        ParseResult parse, PriceArguments prices, PriceList? list, PaperSize paper, Desk desk, ResolvedBrief brief, OutputFolder folder, IProgress<string> stage, CancellationToken stop)
    {
        if (list is not null)
        {
            var quote = desk.Workbench.Quote(brief, list, parse.GetValue(prices.Grade), stage, stop).Quote;
            prices.Demand(parse, quote);
            QuoteFiles.Write(quote, brief, paper, folder.Create);
        }
    }
}
