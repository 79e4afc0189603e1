using System.CommandLine;
using System.Globalization;
using Linewright.Paper;

namespace Linewright.Cli;

/// <summary>What a verb that draws pages asks of them: --paper, and --date for a title block.</summary>
internal sealed class PageArguments
{
    private static readonly string[] Papers = ["a4", "letter"];

    private readonly Option<string> paper;
    private readonly Option<string>? date;

    /// <param name="onPaper">What the choice of paper means for the verb.</param>
    /// <param name="hasDate">True where a page has a place for a date.</param>
    public PageArguments(string onPaper, bool hasDate)
    {
        paper = new Option<string>("--paper") { Description = onPaper, HelpName = "a4|letter", DefaultValueFactory = _ => Papers[0] };
        date = hasDate ? new Option<string>("--date") { Description = "The date in the title block; left out, it stays empty.", HelpName = "YYYY-MM-DD" } : null;
    }

    /// <summary>Adds the options to a verb.</summary>
    public void AddTo(Command verb)
    {
        verb.Options.Add(paper);
        if (date is not null)
        {
            verb.Options.Add(date);
        }
    }

    /// <summary>The paper that was asked for.</summary>
    public PaperSize Paper(ParseResult parse)
    {
        var name = parse.GetValue(paper)!;
        return Array.IndexOf(Papers, name.ToLowerInvariant()) switch
        {
            0 => PaperSize.A4,
            1 => PaperSize.Letter,
            _ => throw new RefusalException(ExitCode.Asked, $"--paper: read '{name}', expected a4 or letter"),
        };
    }

    /// <summary>The date that was given, or null.</summary>
    public DateOnly? Date(ParseResult parse)
    {
        var text = date is null ? null : parse.GetValue(date);
        return text is null
            ? null
            : DateOnly.TryParseExact(text, "yyyy-MM-dd", CultureInfo.InvariantCulture, DateTimeStyles.None, out var day)
                ? day
                : throw new RefusalException(ExitCode.Asked, $"--date: read '{text}', expected a day as YYYY-MM-DD, such as 2026-03-31");
    }
}
