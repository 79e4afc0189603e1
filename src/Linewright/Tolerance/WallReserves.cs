using System.Collections.Immutable;
using Linewright.Assembly;
using Linewright.Brief;
using Linewright.Checks;
using Linewright.Parts;

namespace Linewright.Tolerance;

/// <summary>Finds the reserve of the walls, and tries it: solves the piece anew with it and measures what comes out.</summary>
public static class WallReserves
{
    // A wall that does not thicken by all of a reserve is helped by a second and a third turn; further ones help no more.
    private const int MostTurns = 4;

    private const string Untried = "reckoned, not tried on the solids", None = "none that a brief may name does";

    /// <summary>What a reserve must be if every wall thickens by just what is added: for walls that are refused, and for walls under their limits.</summary>
    /// <param name="line">The line as it is drawn.</param>
    internal static ImmutableArray<WallReserve> Reckoned(LineVariation line)
    {
        return [.. new[] { line.ShortfallMm, 0 }.Distinct().Select(Of)];

        WallReserve Of(double shortfall)
        {
            var reserve = line.WallScatter.ReserveMm(line.Walls, shortfall, line.ReserveMm);
            return new WallReserve(
                100 * WallScatter.Wanted,
                shortfall,
                reserve,
                reserve is { } drawn ? 100 * line.WallScatter.NoneUnder(line.Walls, shortfall, drawn - line.ReserveMm) : null,
                Note: reserve is null ? None : reserve == line.ReserveMm ? "" : Untried);
        }
    }

    /// <summary>Tries the reserves of a study, and raises one that does not give what was reckoned.</summary>
    /// <remarks>Each turn solves, meshes and measures a piece, about a second.</remarks>
    /// <param name="brief">The brief of the piece that was studied.</param>
    /// <param name="report">The study.</param>
    /// <param name="stop">Asks to stop.</param>
    /// <returns>The study with its reserves tried.</returns>
    public static ToleranceReport Tried(ResolvedBrief brief, ToleranceReport report, CancellationToken stop = default)
    {
        ArgumentNullException.ThrowIfNull(brief);
        ArgumentNullException.ThrowIfNull(report);
        return report with { Reserves = [.. report.Reserves.Select(reserve => Tried(brief, reserve, stop))] };
    }

    private static WallReserve Tried(ResolvedBrief brief, WallReserve reckoned, CancellationToken stop)
    {
        if (reckoned.ReserveMm == brief.Process.WallReserveMm)
        {
            // The piece at hand has been measured.
            return reckoned with { TriedPercent = reckoned.ReckonedPercent, Note = "" };
        }

        var reserve = reckoned.ReserveMm;
        var note = "";
        for (var turn = 0; turn < MostTurns && reserve is { } drawn; turn++)
        {
            var design = LineDesign.Solve(brief with { Process = brief.Process with { WallReserveMm = drawn } });
            if (design.Chosen is null)
            {
                return reckoned with { ReserveMm = null, ReckonedPercent = null, Note = $"with it no line closes: {design.Refusal}" };
            }

            var piece = PartsBuilder.Build(design);
            var walls = WallReading.AsCast(WallReading.Of(piece, PieceChecks.Walls(PieceModel.Build(piece, stop: stop), stop)));
            var scatter = WallScatter.Of(design.Brief, piece.Layout.Count);
            var keeps = scatter.NoneUnder(walls, reckoned.ShortfallMm);
            if (keeps >= WallScatter.Wanted)
            {
                return reckoned with { ReserveMm = drawn, TriedPercent = 100 * keeps, Note = "" };
            }

            var worst = walls.MinBy(wall => (wall.ThicknessMm - wall.LimitMm) / scatter.OwnMm(wall))!;
            note = FormattableString.Invariant($"none does: with {drawn:0.00} {worst.Part}, {worst.Feature}, still has {worst.ThicknessMm:0.00} for {worst.LimitMm:0.00}");
            reserve = scatter.ReserveMm(walls, reckoned.ShortfallMm, drawn);
        }

        return reckoned with { ReserveMm = null, ReckonedPercent = null, Note = note.Length > 0 ? note : None };
    }
}
