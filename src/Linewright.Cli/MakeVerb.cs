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
                    if (list is null)
                    {
                        desk.TellUnprinted(brief);
                        return desk.Workbench.Make(brief, paper, date, null, folder, stage, stop);
                    }

                    void Price(QuoteBasis basis) => Write(Quotes.Of(basis, list, parse.GetValue(prices.Grade)), parse, prices, paper, desk, brief, folder);
                    return desk.Workbench.Make(brief, paper, date, Price, folder, stage, stop);
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
    private static void Write(PieceQuote quote, ParseResult parse, PriceArguments prices, PaperSize paper, Desk desk, ResolvedBrief brief, OutputFolder folder)
    {
        prices.Demand(parse, quote);
        desk.TellUnprinted(quote);
        QuoteFiles.Write(quote, brief, paper, folder.Create);
    }
}
