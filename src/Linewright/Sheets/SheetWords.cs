using System.Collections.Immutable;
using Linewright.Brief;
using Linewright.Checks;
using Linewright.Making;
using Linewright.Materials;
using Linewright.Paper;
using Linewright.Parts;
using static Linewright.Sheets.Figures;

namespace Linewright.Sheets;

/// <summary>What the sheet says in words: stones and seats, alloy, tolerances, finish by face, order of work, cautions.</summary>
internal static class SheetWords
{
    /// <summary>Heading and table of every section, in the order in which a bench needs them.</summary>
    public static IEnumerable<(string Heading, Table Table)> Sections(SheetTask task, double widthMm)
    {
        var piece = task.Model.Piece;
        Table Named(params ReadOnlySpan<(string, string)> rows)
            => Words(widthMm, [0.36, 0.64], [.. rows.ToArray().Select(row => (ImmutableArray<string>)[row.Item1, row.Item2])]);
        yield return ("Stones and seats", Named([.. Stones(piece, task)]));
        yield return ("Alloy and weights", Named([.. Metal(piece, task)]));
        yield return ("Finish, face by face", Finish(piece, widthMm));
        yield return ("Tolerances", Named([.. Tolerances(piece, task.Report.StoneOrder)]));
        yield return ("Order of work", Numbered(Work(piece, JointBend.Of(piece, task.Report)), widthMm));
        var open = task.Report.Findings.Where(finding => finding.Verdict != Verdict.Pass).ToList();
        yield return ("What the checks say", open.Count == 0
            ? Numbered([FormattableString.Invariant($"All {task.Report.Findings.Count} checks pass.")], widthMm)
            : Numbered(open.Select(Said), widthMm));
        yield return ("Cautions", Numbered(task.Report.Cautions, widthMm));
    }

    // Rows stand close: all words are to find room on one page.
    private const double PaddingMm = 0.7;

    private static Table Words(double widthMm, ImmutableArray<double> shares, ImmutableArray<ImmutableArray<string>> rows)
        => new([.. shares.Select(share => new TableColumn("", share * widthMm))], rows, SheetPens.Small) { HasHeading = false, PaddingMm = PaddingMm };

    private static Table Numbered(IEnumerable<string> lines, double widthMm)
        => Words(widthMm, [6 / widthMm, 1 - 6 / widthMm], [.. lines.Select((line, i) => (ImmutableArray<string>)[Count(i + 1), line])]);

    /// <summary>Every part with its count and weight.</summary>
    public static Table Parts(SheetTask task, double widthMm)
    {
        var rows = task.Report.Parts.Select(part => (ImmutableArray<string>)
        [
            part.Name, Count(part.Count), part.IsCast ? "cast" : "drawn wire", Factor(part.MassG, part.Count), Mm(part.MassG * part.Count),
        ]).ToList();
        if (task.Report.Weights is { } weights)
        {
            rows.Add(["all metal", "", "rounded once", "", Mm(weights.MetalFinishedG)]);
        }

        var (stones, brief) = (task.Report.Stones, task.Model.Piece.Design.Brief);
        rows.Add([$"stone {Dia(brief.Stone.DiameterMm)}", Count(stones.Count), "set", $"{Factor(stones.EachCt, stones.Count)} ct", $"{Mm(stones.TotalCt)} ct"]);

        double rest = widthMm - 11 - 20 - 16 - 17;
        return new Table(
            [new("part", rest), new("count", 11, Align.Right), new("made", 20), new("g each", 16, Align.Right), new("g, all", 17, Align.Right)],
            [.. rows],
            SheetPens.Small)
        {
            PaddingMm = PaddingMm,
        };
    }

    private static IEnumerable<(string, string)> Stones(Piece piece, SheetTask task)
    {
        var (brief, form, stone, stones) = (piece.Design.Brief, piece.Link, piece.Stone, task.Report.Stones);
        yield return ("stone", $"{Count(stones.Count)} \u00d7 {brief.Species.Name}, round brilliant, {Dia(stone.DiameterMm)}");
        yield return ("weight", $"{Factor(stones.EachCt, stones.Count)} ct each, {Mm(stones.TotalCt)} ct in all");
        yield return ("cut to", $"table {Number(brief.Stone.TablePercent, 1)} %, crown {Number(brief.Stone.CrownDeg, 1)}\u00b0, pavilion {Number(brief.Stone.PavilionDeg, 2)}\u00b0, girdle {Number(brief.Stone.GirdlePercent, 1)} %; depth {Mm(stone.DepthMm)}");
        yield return ("seat", $"4 bearings, cut {Mm(form.SeatMm)} into claws of {Dia(2 * form.ClawRadiusMm)}; girdle's middle {Mm(form.GirdleHeightMm)} over the skin");
        // Source read: a setting bur of 98 to 100 % of the stone.
        yield return ("bearing angles", $"{Number(brief.Stone.CrownDeg, 1)}\u00b0 over and {Number(brief.Stone.PavilionDeg, 2)}\u00b0 under the girdle, as the stone; 90\u00b0 bur of {Dia(0.98 * stone.DiameterMm)} to {Mm(stone.DiameterMm)}");
        yield return ("claw tips", $"{Mm(brief.Setting.CoverMm)} over the crown, radius {Mm(form.TipRadiusMm)}; no higher than the table, {Mm(form.TableHeightMm)}");
        yield return ("claws as cast", $"upright, to {Mm(form.CastTopMm)} over the skin: {Mm(brief.Setting.TipRiseMm)} over the table");
        yield return ("free of stone", $"rails {Mm(LinkForm.RailStoneClearMm)}; culet {Mm(piece.Hinge.CuletMm)} over the skin; {Mm(form.PitchMm - form.StoneMm)} from girdle to girdle");
    }

    private static IEnumerable<(string, string)> Metal(Piece piece, SheetTask task)
    {
        var (brief, alloy) = (piece.Design.Brief, piece.Design.Brief.Alloy);
        yield return ("alloy", $"{alloy.Name}, fineness {Number(alloy.FinenessPerMille, 0)} \u2030 nominal, to be assayed");
        yield return ("composition", string.Join(", ", alloy.Composition.Select(part => $"{part.Key} {Number(part.Value)} %")));
        yield return ("density", $"{Mm(alloy.DensityGPerCm3)} g/cm3; melts at {Number(alloy.MeltingLowC, 0)} to {Number(alloy.MeltingHighC, 0)} \u00b0C");
        yield return ("shrinkage", $"{Number(brief.Process.ShrinkPercent)} %: pattern files are enlarged for it, this sheet is not");
        if (task.Report.Weights is { } weights)
        {
            yield return ("metal", $"{Mm(weights.MetalFinishedG)} g finished, {Mm(weights.MetalCastG)} g as cast, {Mm(weights.MetalToMeltG)} g to melt");
        }

        yield return ("tongue", $"strip {Mm(piece.Clasp.StripMm)} mm, {(brief.Clasp.Temper == Temper.Hard ? "hard" : "annealed")}; one leaf, {Mm(piece.Clasp.LeafMm)} mm");
    }

    /// <summary>What holds where a dimension bears no tolerance: two standard deviations of the process, mm.</summary>
    public static string GeneralTolerance(Piece piece) => $"\u00b1{Mm(2 * piece.Design.Brief.Process.ToleranceMm)}";

    private static IEnumerable<(string, string)> Tolerances(Piece piece, StoneOrder? order)
    {
        var (spec, hinge, layout) = (piece.Design.Spec!, piece.Hinge, piece.Layout);
        var sigma = piece.Design.Brief.Process.ToleranceMm;
        yield return ("without a tolerance", $"{GeneralTolerance(piece)}: two standard deviations of the process, {Number(sigma, 3)} each");
        yield return ("pitch", $"{Fine(layout.PitchMm)}: 0.01 on every link is {Mm(0.01 * layout.Count)} on the piece; measure ten links pulled taut: {Mm(10 * layout.PitchMm)}");
        yield return ("laid-flat length", $"{Mm(layout.LaidFlatMm)} \u00b11.5 (common practice), closed and taut; all play together shortens it by {Mm(layout.PlayTotalMm)}");
        yield return ("hole over bar", $"{Fine(hinge.HoleMm - hinge.BarMm)} on the diameter; it must run free from 0.05, and over 0.10 it rattles (common practice)");
        yield return ("eye between cheeks", $"{Mm(hinge.SideClearanceMm)} each side; 0.05 to 0.10 (common practice)");
        if (order is not null)
        {
            yield return ("stones", $"{Dia(StoneOrders.Up(order.SmallestMm))} to {Mm(StoneOrders.Down(order.LargestMm))}, as ordered: smaller ones sit loose, larger ones do not fit: {order.SpreadReason}");
        }

        yield return ("walls, finished", $"drawn at least {Mm(spec.DrawnWallMm)} in this metal, wires {Mm(spec.DrawnWireMm)}, round a hinge hole {Mm(spec.DrawnKnuckleMm)}; a casting up to {Mm(piece.Design.Brief.Process.WallShortfallMm)} thinner is let pass");
        yield return ("tongue in its box", $"{Mm(spec.SidePlayMm)} each side, {Mm(ClaspForm.SlideMm)} over and under: it slides and does not rattle");
        yield return ("catch", $"holds {Mm(piece.Clasp.OverlapMm)} behind the lip; freed by {Mm(piece.Clasp.PressMm)}");
    }

    private static Table Finish(Piece piece, double widthMm)
    {
        var brief = piece.Design.Brief;
        var left = Mm(brief.Process.FinishLossMm);
        var isPinned = piece.Hinge.Kind == HingeKind.PinnedKnuckles;
        List<ImmutableArray<string>> rows =
        [
            ["claws, rails and stops outside", "pre-polish before setting, mirror after", left],
            ["box and carrier outside", "mirror, edges kept", left],
            ["skin side", "smooth and brushed, edges broken 0.1", left],
            ["windows, gallery, openings", "as tumbled; light must pass", left],
            ["bearings", "cut to the stone, rim burnished; no polish", "none"],
            [isPinned ? "pin holes, inner cheeks, eye's sides" : "bar, hole, inner cheeks, eye's sides", isPinned ? "reamed; brush only" : "brush only: polish makes it rattle", "none"],
            ["mouth and carrier's inner face", "flat, fitted to each other", "none"],
            ["tongue, lip, cut-out", "stoned free of burr, not polished", "none"],
        ];
        if (brief.Finish.RhodiumUm > 0)
        {
            rows.Add(["all outside faces", $"rhodium {Number(brief.Finish.RhodiumUm)} \u00b5m, last of all", "-"]);
        }

        return new Table(
            [new("face", 0.38 * widthMm), new("finish", 0.42 * widthMm), new("left on, mm", 0.20 * widthMm, Align.Right)], [.. rows], SheetPens.Small)
        {
            PaddingMm = PaddingMm,
        };
    }

    private static IEnumerable<string> Work(Piece piece, JointBend bend)
    {
        var (hinge, form, layout) = (piece.Hinge, piece.Link, piece.Layout);
        yield return "Cut sprues, tumble, check every bore and bar with gauges; pre-polish links and clasp apart.";
        if (hinge.Kind == HingeKind.PinnedKnuckles)
        {
            yield return $"Ream the holes to {Dia(hinge.HoleMm)}. Put each eye between the next cheeks, press in drawn wire {Dia(hinge.BarMm)} \u00d7 {Mm(2 * hinge.CheekOuterMm + 0.3)}, rivet or tack both ends flush.";
        }
        else
        {
            yield return $"Eyes come open, tail down: lay the next link's bar {Dia(hinge.BarMm)} into the hole from the skin side, bend the tail round to {Radius(hinge.EyeRadiusMm)}, weld the seam, file flush.";
        }

        yield return "All links lie one way: eye of one over the bar of the next. The last eye joins the box's bar, the tongue's eye joins the first link's bar.";
        yield return $"Try every joint: it falls by its own weight, bends {bend.Outward} back to its stops. Pull taut and measure {Mm(layout.LaidFlatMm - layout.ClaspMm)} over {Count(layout.Count)} links.";
        yield return $"Set: cut bearings {Mm(form.SeatMm)} deep at {Mm(form.GirdleHeightMm)} over the skin, lay all tables level, bend opposite claws by turns, cut off over {Mm(form.TableHeightMm)}, round the tips, try with a stocking.";
        yield return "Final polish with the line pulled taut on a board; clean, dry, rinse the box through its open back.";
        yield return $"Fit the tongue last: it clicks behind the lip, comes free with {Mm(piece.Clasp.PressMm)} of the push, and takes no set after twenty openings.";
    }

    // Which rule, unless the words begin with it, then where: a stop on a stop says nothing to whoever does not know that the bend was measured.
    private static string Said(Finding finding)
    {
        var figures = finding.Figures().Replace(" deg", "\u00b0", StringComparison.Ordinal);
        var measured = figures.Length > 0 ? $": {figures}" : "";
        var cure = finding.Cure.Length > 0 ? $"; {finding.Cure}" : "";
        var verdict = finding.Verdict == Verdict.Fail ? "FAIL" : "Caution";
        var rule = finding.Where.StartsWith(finding.Rule.Split('-')[0], StringComparison.OrdinalIgnoreCase) ? "" : $", {finding.Rule.Replace('-', ' ')}";
        return $"{verdict}{rule}: {finding.Where}{measured}{cure}.";
    }
}
