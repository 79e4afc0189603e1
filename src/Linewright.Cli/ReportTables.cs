using System.Globalization;
using System.Text;
using Linewright.Checks;
using Linewright.Making;
using Spectre.Console;

namespace Linewright.Cli;

/// <summary>Prints a report for a person, from 80 columns up; knows nothing that the report does not say.</summary>
internal sealed class ReportTables : IDisposable
{
    // Below this the reasons of a candidate go under the table instead of into it.
    private const int RoomForReasons = 110;

    private readonly PrintedPage page;
    private readonly IAnsiConsole console;

    public ReportTables(Desk desk)
    {
        page = new PrintedPage(desk);
        console = page.Console;
    }

    /// <summary>The piece in a few lines.</summary>
    public void Summary(Report report)
    {
        var (brief, layout) = (report.Brief, report.Layout);
        Line($"[bold]{Markup.Escape(brief.Name)}[/]");
        Line($"{Markup.Escape(brief.Alloy.Name)}");
        Line($"{Whole(report.Stones.Count)} x {Markup.Escape(brief.Species.Name.ToLowerInvariant())} {Number(brief.Stone.DiameterMm, 2)} mm, {Number(report.Stones.TotalCt, 2)} ct");
        if (layout.Count == 0)
        {
            Line($"no layout closes");
            console.WriteLine();
            return;
        }

        Line($"{Whole(layout.Count)} links at a pitch of {Number(layout.PitchMm, 3)} mm, clasp {Number(layout.ClaspMm, 3)} mm");
        Line($"laid flat {Number(layout.LaidFlatMm, 3)} mm, inside circumference {Number(layout.InsideCircumferenceMm, 1)} mm");
        console.WriteLine();
    }

    /// <summary>Every layout that closes, best first.</summary>
    public void Candidates(Report report)
    {
        if (report.Layout.Candidates.Count == 0)
        {
            return;
        }

        var isWide = console.Profile.Width >= RoomForReasons;
        Line($"[bold]Layouts that close[/]");
        var table = NewTable();
        foreach (var head in (string[])["", "links", "pitch\nmm", "gap\nmm", "clasp\nmm", "stones\nct", "inside\nmm", "hinge\ndeg"])
        {
            table.AddColumn(new TableColumn(head).RightAligned().NoWrap());
        }

        if (isWide)
        {
            table.AddColumn("reason");
        }

        foreach (var (rank, candidate) in report.Layout.Candidates.Index())
        {
            string[] cells =
            [
                Whole(rank + 1), Whole(candidate.Count), Number(candidate.PitchMm, 3), Number(candidate.StoneGapMm, 3), Number(candidate.ClaspMm, 2),
                Number(candidate.TotalCt, 2), Number(candidate.InsideCircumferenceMm, 1), Number(candidate.HingeAngleDeg, 2),
            ];
            table.AddRow(isWide ? [.. cells, Markup.Escape(candidate.Reason)] : cells);
        }

        console.Write(table);
        if (!isWide)
        {
            var reasons = NewGrid(4);
            foreach (var (rank, candidate) in report.Layout.Candidates.Index().Where(entry => entry.Item.Reason.Length > 0))
            {
                reasons.AddRow(new Text(Whole(rank + 1)).RightJustified(), new Text(candidate.Reason));
            }

            console.Write(reasons);
            console.WriteLine();
        }
    }

    /// <summary>What the checks found, worst first; passed ones only where asked for.</summary>
    public void Findings(Report report, bool withPassed)
    {
        var shown = report.Findings
            .Where(finding => withPassed || finding.Verdict != Verdict.Pass)
            .OrderByDescending(finding => finding.Verdict)
            .ToList();
        if (shown.Count > 0)
        {
            var grid = NewGrid(7);
            foreach (var finding in shown)
            {
                grid.AddRow(VerdictWord(finding.Verdict), Block(finding));
            }

            console.Write(grid);
        }

        foreach (var caution in report.Cautions)
        {
            console.Write(NewGrid(7).AddRow(new Markup("[yellow]note[/]"), new Text(caution)));
        }

        var counts = report.Findings.CountBy(finding => finding.Verdict).ToDictionary();
        if (counts.Count > 0)
        {
            Line($"{Whole(counts.GetValueOrDefault(Verdict.Pass))} passed, {Whole(counts.GetValueOrDefault(Verdict.Caution))} with caution, {Whole(counts.GetValueOrDefault(Verdict.Fail))} failed");
        }
    }

    /// <summary>The unique parts, as cast: size of the file's mesh, metal of the raw casting. Drawn wire is not cast and has no weight here.</summary>
    public void Parts(Report report)
    {
        if (report.Parts.Count == 0)
        {
            return;
        }

        Line($"[bold]Parts, as cast[/]");
        var table = NewTable();
        table.AddColumn("part");
        foreach (var head in (string[])["count", "volume\nmm3", "surface\nmm2", "each\ng", "all\ng", "triangles"])
        {
            table.AddColumn(new TableColumn(head).RightAligned().NoWrap());
        }

        foreach (var part in report.Parts)
        {
            table.AddRow(
                Markup.Escape(part.Name), Whole(part.Count), Number(part.VolumeMm3, 2), Number(part.AreaMm2, 1),
                part.IsCast ? Number(part.CastG, 3) : "drawn", part.IsCast ? Number(part.CastG * part.Count, 2) : "wire", Whole(part.Triangles));
        }

        console.Write(table);
    }

    /// <summary>Metal and stones.</summary>
    public void Weights(Report report)
    {
        Line($"[bold]Weights[/]");
        var table = NewTable();
        table.AddColumn("what");
        table.AddColumn(new TableColumn("weight").RightAligned().NoWrap());
        if (report.Weights is { } weights)
        {
            table.AddRow("metal, finished", $"{Number(weights.MetalFinishedG, 2)} g");
            table.AddRow("metal, as cast", $"{Number(weights.MetalCastG, 2)} g");
            table.AddRow("metal to melt, with its trees", $"{Number(weights.MetalToMeltG, 2)} g");
        }

        var stones = report.Stones;
        table.AddRow("one stone, by its volume", $"{Number(stones.EachCt, 4)} ct");
        table.AddRow("one stone, by the trade's formula", $"{Number(stones.EachCtTrade, 4)} ct");
        table.AddRow($"{Whole(stones.Count)} stones", $"{Number(stones.TotalCt, 3)} ct");
        console.Write(table);
    }

    /// <summary>The same piece in every alloy of the table.</summary>
    public void Alloys(Report report)
    {
        if (report.Weights is not { Alloys.Count: > 0 } weights)
        {
            return;
        }

        Line($"[bold]The same solids in other alloys[/]");
        var table = NewTable();
        table.AddColumn("metal");
        foreach (var head in (string[])["finished\ng", "as cast\ng", "to melt\ng"])
        {
            table.AddColumn(new TableColumn(head).RightAligned().NoWrap());
        }

        foreach (var row in weights.Alloys)
        {
            var name = row.Metal == report.Brief.Metal ? $"[bold]{Markup.Escape(row.Metal)}[/]" : Markup.Escape(row.Metal);
            table.AddRow(name, Number(row.FinishedG, 2), Number(row.CastG, 2), Number(row.ToMeltG, 2));
        }

        console.Write(table);
    }

    /// <summary>How a lot of such pieces comes out.</summary>
    public void Tolerance(Report report)
    {
        if (report.Tolerance is { } study)
        {
            ToleranceTables.Write(console, study);
        }
    }

    /// <summary>Steps, sprues, plates, trees and the metal to weigh out.</summary>
    public void Casting(Report report)
    {
        if (report.Casting is { } casting)
        {
            CastingTables.Write(console, casting);
        }
    }

    /// <summary>Where the files are.</summary>
    public void Written(string folder) => Line($"written to {Markup.Escape(folder)}");

    /// <summary>Puts the page on the desk.</summary>
    public void Dispose() => page.Dispose();

    private static Markup VerdictWord(Verdict verdict) => new(verdict switch
    {
        Verdict.Fail => "[red bold]FAIL[/]",
        Verdict.Caution => "[yellow]caution[/]",
        _ => "[green]pass[/]",
    });

    private static Rows Block(Finding finding)
    {
        var head = new StringBuilder($"[bold]{Markup.Escape(finding.Rule)}[/]");
        if (finding.Where.Length > 0)
        {
            head.Append(", ").Append(Markup.Escape(finding.Where));
        }

        if (finding.Figures() is { Length: > 0 } figures)
        {
            head.Append(": ").Append(Markup.Escape(figures));
        }

        var lines = new List<Spectre.Console.Rendering.IRenderable> { new Markup(head.ToString()) };
        if (finding.Verdict != Verdict.Pass)
        {
            if (finding.Cure.Length > 0)
            {
                lines.Add(new Text(finding.Cure));
            }

            var source = finding.Mark.Length > 0 ? $"{finding.Source} ({finding.Mark})" : finding.Source;
            lines.Add(new Text(source, new Style(decoration: Decoration.Dim)));
        }

        return new Rows(lines);
    }

    private static Table NewTable() => new Table().Border(TableBorder.Simple);

    private static Grid NewGrid(int firstWidth) => new Grid()
        .AddColumn(new GridColumn().Width(firstWidth).NoWrap().PadRight(2))
        .AddColumn(new GridColumn().PadRight(0));

    private static string Number(double value, int decimals) => value.ToString("F" + decimals.ToString(CultureInfo.InvariantCulture), CultureInfo.InvariantCulture);

    private static string Whole(int value) => value.ToString(CultureInfo.InvariantCulture);

    private void Line(FormattableString markup) => page.Line(markup);
}
