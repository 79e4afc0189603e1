using System.Globalization;
using Linewright.Casting;
using Spectre.Console;

namespace Linewright.Cli;

/// <summary>Prints a casting plan for a person.</summary>
internal static class CastingTables
{
    /// <summary>Writes every table of the plan.</summary>
    public static void Write(IAnsiConsole console, CastingReport casting)
    {
        var steps = Columns("step", "shrinks\n%", "polished face\nloses mm", "scale +-\n%", "face +-\nmm");
        foreach (var step in casting.Steps)
        {
            steps.AddRow(Markup.Escape(step.Name), Number(step.ShrinkPercent, 2), Number(step.PolishedLossMm, 2), Number(step.ScaleSpreadPercent, 2), Number(step.FaceSpreadMm, 3));
        }

        console.Write(steps);
        console.MarkupLine(FormattableString.Invariant($"patterns are enlarged by {casting.PatternScale:0.00000}; polished faces stand out by {casting.PolishedAllowanceMm:0.00} mm, kept faces do not"));

        var sprues = Columns("sprue of", "count", "sprue\nmm", "gate\nmm", "thickest\nmm", "modulus\nmm", "gate over\npart", "freezes\nlonger by");
        foreach (var sprue in casting.Sprues)
        {
            sprues.AddRow(
                Markup.Escape(sprue.Part), Whole(sprue.Count), Number(sprue.SprueMm, 2), Number(sprue.GateMm, 2), Number(sprue.ThickestMm, 2), Number(sprue.ModulusMm, 3),
                Number(sprue.FeedRatio, 2), FormattableString.Invariant($"x {sprue.FreezesAfter:0.0}"));
        }

        console.Write(sprues);
        var plates = Columns("plate", "patterns", "width\nmm", "depth\nmm", "height\nmm");
        foreach (var plate in casting.Plates)
        {
            plates.AddRow(Markup.Escape(plate.File), Whole(plate.Patterns), Number(plate.UsedXMm, 1), Number(plate.UsedYMm, 1), Number(plate.HeightMm, 1));
        }

        console.Write(plates);
        foreach (var (number, tree) in casting.Trees.Index())
        {
            var rings = Columns(FormattableString.Invariant($"tree {number + 1}, from the button"), "parts", "height\nmm", "first\ndeg", "every\ndeg");
            foreach (var ring in tree.Rings)
            {
                rings.AddRow(Markup.Escape(ring.Part), Whole(ring.Count), Number(ring.HeightMm, 1), Number(ring.FirstDeg, 1), Number(ring.EveryDeg, 1));
            }

            console.Write(rings);
            console.MarkupLine(FormattableString.Invariant(
                $"stem {tree.StemMm:0.0} x {tree.StemLengthMm:0.0}, button {2 * tree.ButtonMm:0.0} across; the tree is {tree.WidthMm:0.0} wide and {tree.HeightMm:0.0} high"));
            console.MarkupLine(FormattableString.Invariant(
                $"parts {tree.PartsG:0.00} g, sprues {tree.SpruesG:0.00} g, stem {tree.StemG:0.00} g, button {tree.ButtonG:0.00} g"));
        }

        console.WriteLine();
        console.MarkupLine(FormattableString.Invariant($"[bold]metal to weigh out {casting.MetalToWeighOutG:0.00} g[/]"));
        console.MarkupLine(FormattableString.Invariant($"patterns with sprues {casting.PatternsG:0.00} g; a gram of them is {casting.MetalPerPattern:0.00} g of metal"));
        console.WriteLine();
        foreach (var note in casting.Notes)
        {
            console.Write(new Grid().AddColumn(new GridColumn().Width(7).NoWrap().PadRight(2)).AddColumn(new GridColumn().PadRight(0)).AddRow(new Markup("[yellow]note[/]"), new Text(note)));
        }
    }

    private static Table Columns(string first, params ReadOnlySpan<string> others)
    {
        var table = new Table().Border(TableBorder.Simple).AddColumn(first);
        foreach (var head in others)
        {
            table.AddColumn(new TableColumn(head).RightAligned().NoWrap());
        }

        return table;
    }

    private static string Whole(int value) => value.ToString(CultureInfo.InvariantCulture);

    private static string Number(double value, int decimals) => value.ToString("F" + decimals.ToString(CultureInfo.InvariantCulture), CultureInfo.InvariantCulture);
}
