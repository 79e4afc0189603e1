using System.Globalization;
using Linewright.Tolerance;
using Spectre.Console;

namespace Linewright.Cli;

/// <summary>Prints a study of tolerances for a person.</summary>
internal static class ToleranceTables
{
    // More walls than this nobody reads; the report has them all.
    private const int MostWalls = 8;

    /// <summary>Writes every table of the study.</summary>
    public static void Write(IAnsiConsole console, ToleranceReport study)
    {
        Heading(console, FormattableString.Invariant($"Of {study.Pieces} pieces, trees to a piece: {study.Trees}"));
        var chances = Columns("demand", "pieces\n%", "19 in 20\n%", "integral\n%");
        Row("every joint runs free", study.RunsFree);
        Row("tongue goes in and out", study.ClaspCloses);
        Row("catch holds", study.ClaspHolds);
        Row("all three", study.Yield);
        Row("no wall refused as cast", study.WallsAccepted);
        Row("no wall under its drawing's limit", study.WallsHold);
        console.Write(chances);

        var length = study.Length;
        var lengths = Columns("closed length", "mm", "19 in 20\nmm");
        lengths.AddRow("as designed", Number(length.NominalMm, 3), "");
        lengths.AddRow("mean", Number(length.MeanMm, 3), FormattableString.Invariant($"+-{length.MeanErrorMm:0.000}"));
        lengths.AddRow("standard deviation", Number(length.DeviationMm, 3), FormattableString.Invariant($"{length.ClosedFormDeviationMm:0.000} by the sum of squares"));
        lengths.AddRow("5 % are shorter than", Number(length.LowMm.Value, 3), Between(length.LowMm, 3));
        lengths.AddRow("5 % are longer than", Number(length.HighMm.Value, 3), Between(length.HighMm, 3));
        console.Write(lengths);

        var sensitivity = Columns("tolerance", "one\nsigma", "of length's\nvariance %", "of worst\nwall's %", "pieces it\ncosts %");
        foreach (var row in study.Sensitivity)
        {
            sensitivity.AddRow(
                Markup.Escape(Words(row.Tolerance)),
                Markup.Escape(FormattableString.Invariant($"{row.Spread:0.###} {row.Unit}")),
                Number(row.LengthSharePercent, 1),
                row.WallSharePercent is { } wall ? Number(wall, 1) : "",
                Number(row.YieldGainPercent, 2));
        }

        console.Write(sensitivity);

        var gap = study.Gap;
        var gaps = Columns(FormattableString.Invariant($"for {gap.WantedPercent:0} % running free"), "mm", "19 in 20\nmm", "integral\nmm");
        gaps.AddRow("hinge.diametral_clearance_mm", Number(gap.DiametralClearanceMm.Value, 4), Between(gap.DiametralClearanceMm, 4), Number(gap.DiametralClosedFormMm, 4));
        gaps.AddRow("hinge.side_clearance_mm", Number(gap.SideClearanceMm.Value, 4), Between(gap.SideClearanceMm, 4), gap.SideClosedFormMm is { } side ? Number(side, 4) : "");
        console.Write(gaps);

        if (study.Walls.Count > 0)
        {
            var walls = Columns("wall", "count", "as set\nmm", "limit\nmm", "under it,\na piece", "95 % keep\nmm", "for 99 %\ndraw mm");
            foreach (var wall in study.Walls.Take(MostWalls))
            {
                walls.AddRow(
                    Markup.Escape($"{wall.Part}, {wall.Feature}"), wall.Count.ToString(CultureInfo.InvariantCulture), Number(wall.NominalMm, 3), Number(wall.LimitMm, 3),
                    Number(wall.UnderEach, 2), Number(wall.ThinnestMm, 3), Number(wall.ToDrawMm, 3));
            }

            console.Write(walls);
        }

        var reserves = Columns("for 99 % of pieces", "process.wall_\nreserve_mm", "reckoned\n%", "tried\n%");
        foreach (var reserve in study.Reserves)
        {
            reserves.AddRow(
                Demand(reserve),
                reserve.ReserveMm is { } drawn ? Number(drawn, 2) : "none",
                reserve.ReckonedPercent is { } reckoned ? Number(reckoned, 2) : "",
                reserve.TriedPercent is { } tried ? Number(tried, 2) : "");
        }

        console.Write(reserves);

        foreach (var note in study.Reserves.Where(reserve => reserve.ReserveMm is null).Select(reserve => $"{Demand(reserve)}: {reserve.Note}").Concat(study.Notes))
        {
            console.Write(new Grid().AddColumn(new GridColumn().Width(7).NoWrap().PadRight(2)).AddColumn(new GridColumn().PadRight(0)).AddRow(new Markup("[yellow]note[/]"), new Text(note)));
        }

        void Row(string demand, Chance chance) => chances.AddRow(
            demand,
            Number(chance.Percent, 2),
            FormattableString.Invariant($"{chance.LowPercent:0.00} to {chance.HighPercent:0.00}"),
            chance.ClosedFormPercent is { } closed ? Number(closed, 2) : "");
    }

    private static string Demand(WallReserve reserve)
        => reserve.ShortfallMm > 0 ? FormattableString.Invariant($"no wall over {reserve.ShortfallMm:0.00} mm short") : "no wall under its drawing's limit";

    private static string Words(ToleranceSource source) => source switch
    {
        ToleranceSource.TreeScale => "scale of the tree",
        ToleranceSource.TreeFaces => "faces of the tree, alike",
        ToleranceSource.Sizes => "sizes as cast",
        ToleranceSource.JointFit => "fit of the joints",
        ToleranceSource.Finishing => "finishing",
        _ => "strip of the tongue",
    };

    private static void Heading(IAnsiConsole console, string text) => console.MarkupLine($"[bold]{Markup.Escape(text)}[/]");

    private static Table Columns(string first, params ReadOnlySpan<string> others)
    {
        var table = new Table().Border(TableBorder.Simple).AddColumn(first);
        foreach (var head in others)
        {
            table.AddColumn(new TableColumn(head).RightAligned().NoWrap());
        }

        return table;
    }

    private static string Between(Quantile quantile, int decimals) => $"{Number(quantile.Low, decimals)} to {Number(quantile.High, decimals)}";

    private static string Number(double value, int decimals) => value.ToString("F" + decimals.ToString(CultureInfo.InvariantCulture), CultureInfo.InvariantCulture);
}
