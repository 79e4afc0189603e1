using System.Collections.Immutable;
using Linewright.Paper;
using Linewright.Parts;
using Linewright.Solids.Outlines;
using Linewright.Solids.Space;
using static Linewright.Sheets.Figures;

namespace Linewright.Sheets;

/// <summary>The clasp, closed: cut open along with its tongue in place, from above, from its end, and pictorial.</summary>
internal sealed class ClaspPage
{
    // A strip of 0.35 is then a wide 1.75 on the paper. Assumed: what can still be hatched and dimensioned.
    private static readonly SheetScale Wanted = new(5);

    private readonly Piece piece;
    private readonly ClaspForm clasp;
    private readonly HingeForm hinge;
    private readonly Bounds size;
    private readonly double beside;
    private readonly OutlineView along;
    private readonly OutlineView above;
    private readonly OutlineView end;
    private readonly OutlineView pictorial;

    public ClaspPage(Piece piece, SheetBodies bodies, Bounds size)
    {
        (this.piece, clasp, hinge, this.size) = (piece, piece.Clasp, piece.Hinge, size);
        ImmutableArray<PlacedBody> closed = [.. bodies.Clasp(Pose.Identity)];
        var views = new OutlineView[4];
        var fine = bodies.Settings;
        var middle = (clasp.CavityMm + clasp.MouthMm) / 2;

        // Beside the cut-out, or the lip and the catch behind it would not be cut.
        beside = (clasp.CutOutMm + clasp.StripWidthMm) / 4;
        (ViewFrame Frame, OutlineSettings Settings)[] wanted =
        [
            (ViewFrame.From(-Vec3.UnitY, Vec3.UnitZ), fine with { CutDepth = beside }),
            (ViewFrame.From(Vec3.UnitZ, Vec3.UnitY), fine with { WithHidden = true }),
            (ViewFrame.From(Vec3.UnitX, Vec3.UnitZ), fine with { CutDepth = middle }),
            (ViewFrame.From(new Vec3(1, 1, 1), Vec3.UnitZ), fine),
        ];
        Parallel.For(0, views.Length, i => views[i] = OutlineDrawer.Draw(closed, wanted[i].Frame, wanted[i].Settings));
        (along, above, end, pictorial) = (views[0], views[1], views[2], views[3]);
    }

    /// <summary>The clasp, on one page, or on two where its strip could not be told from a line.</summary>
    public ImmutableArray<DrawnPage> Draw(PaperBox field, Projection projection)
        => DrawnPage.Lay(
            new("clasp, closed", scale => Cells(scale, projection)),
            new("clasp, closed, sections", scale => new Block?[,] { { Along(scale) }, { End(scale) } }),
            new("clasp, closed, views", scale => new Block?[,] { { Above(scale) }, { Pictorial(scale.Smaller, $", scale {scale.Smaller.Text}") } }),
            field,
            Wanted);

    private Block?[,] Cells(SheetScale scale, Projection projection)
    {
        Block alongBlock = Along(scale), endBlock = End(scale), aboveBlock = Above(scale), pictorialBlock = Pictorial(scale);
        return projection == Projection.FirstAngle
            ? new Block?[,] { { alongBlock, endBlock }, { aboveBlock, pictorialBlock } }
            : new Block?[,] { { aboveBlock, pictorialBlock }, { alongBlock, endBlock } };
    }

    private Block Along(SheetScale scale)
    {
        var view = new DrawnView(scale);
        view.Add(along, LinkPage.PenOf);
        LinkPage.Cuts(view, along);
        double length = clasp.LengthMm, high = clasp.HeightMm, axis = hinge.HeightMm, wall = clasp.WallMm;
        view.Centre(new(0, axis), hinge.EyeRadiusMm);
        view.Centre(new(length, axis), hinge.EyeRadiusMm);
        view.Dimension(DrawnView.Side.Below, new(0, axis), new(length, axis), $"{Mm(length)} axis to axis");
        view.Dimension(DrawnView.Side.Below, new(0, axis), new(clasp.MouthMm, 0), $"{Mm(clasp.MouthMm)} box");
        view.Dimension(DrawnView.Side.Below, new(clasp.CavityMm, wall), new(clasp.MouthMm - clasp.LipMm, wall), $"{Mm(clasp.MouthMm - clasp.LipMm - clasp.CavityMm)} cavity");
        view.Dimension(DrawnView.Side.Above, new(clasp.FoldMm + clasp.StripMm / 2, clasp.UpperLeafMm), new(clasp.CatchMm, clasp.UpperLeafMm), $"{Mm(clasp.LeafMm)} leaf");
        view.Dimension(DrawnView.Side.Above, new(clasp.CatchMm - clasp.PushMm, high + clasp.PressMm), new(clasp.CatchMm, high + clasp.PressMm), $"{Mm(clasp.PushMm)} push");
        view.Dimension(DrawnView.Side.Left, new(clasp.CavityMm, 0), new(clasp.CavityMm, high), Mm(high));
        view.Dimension(DrawnView.Side.Left, new(0, 0), new(0, axis), Mm(axis));
        view.Leader(new(clasp.CatchMm - 0.1, clasp.UpperLeafMm), $"catch holds {Mm(clasp.OverlapMm)}");
        view.Leader(new(clasp.CatchMm - clasp.PushMm / 2, high + clasp.PressMm), $"press {Mm(clasp.PressMm)} to free");
        view.Leader(new(clasp.MouthMm - clasp.LipMm / 2, (high + clasp.RoofMm) / 2), $"lip {Mm(clasp.LipMm)}, drops {Mm(clasp.LipDropMm)}");
        view.Leader(new((clasp.MouthMm + clasp.CarrierMm) / 2, 0.5 * wall), $"{Mm(clasp.CarrierMm - clasp.MouthMm)} at the mouth");
        view.Leader(new(length + hinge.HoleMm / 2 * Math.Cos(-0.5), axis + hinge.HoleMm / 2 * Math.Sin(-0.5)), $"hole {Dia(hinge.HoleMm)}");
        return view.Finish("SECTION C-C, CLOSED", "along the line, beside the cut-out; box at the left, tongue on its carrier at the right");
    }

    private Block Above(SheetScale scale)
    {
        var view = new DrawnView(scale);
        view.Add(above, line => line.IsVisible ? SheetPens.Wide : null);
        double half = clasp.WidthMm / 2, cut = clasp.CutOutMm / 2;
        view.Axis(new(0, 0), new(clasp.LengthMm, 0));
        var middle = (clasp.CavityMm + clasp.MouthMm) / 2;
        view.CuttingPlane(new(size.Low.X, -beside), new(size.High.X, -beside), new(0, 1), "C");
        view.CuttingPlane(new(middle, size.Low.Y), new(middle, size.High.Y), new(-1, 0), "D");
        view.Dimension(DrawnView.Side.Left, new(clasp.CavityMm, -half), new(clasp.CavityMm, half), Mm(clasp.WidthMm));
        view.Dimension(DrawnView.Side.Below, new(clasp.CatchMm - clasp.PushMm - piece.Design.Spec!.SidePlayMm, -cut), new(clasp.MouthMm, -cut), $"{Mm(clasp.MouthMm - clasp.CatchMm + clasp.PushMm + piece.Design.Spec.SidePlayMm)} cut-out");

        // At the side away from section C, so that the leader does not run through its letter.
        view.Leader(new(clasp.MouthMm - 0.2, cut), $"cut-out {Mm(clasp.CutOutMm)} wide");
        if (piece.Find(PartRole.Safety) is not null)
        {
            view.Leader(new(clasp.MouthMm - 1, size.High.Y - 0.9), $"safety, wire {Dia(SafetyBuilder.WireMm)}");
        }

        return view.Finish("FROM ABOVE");
    }

    private Block End(SheetScale scale)
    {
        var view = new DrawnView(scale);
        view.Add(end, LinkPage.PenOf);
        LinkPage.Cuts(view, end);
        double half = clasp.WidthMm / 2, strip = clasp.StripWidthMm / 2, high = clasp.HeightMm, wall = clasp.WallMm;
        view.Axis(new(0, 0), new(0, high));
        view.Dimension(DrawnView.Side.Below, new(-half, 0.3), new(half, 0.3), Mm(clasp.WidthMm));
        view.Dimension(DrawnView.Side.Above, new(-strip, high / 2), new(strip, high / 2), $"{Mm(clasp.StripWidthMm)} strip");

        // On the left: on the right hangs the safety.
        view.Leader(new(-half + wall / 2, 0.7 * high), $"wall {Mm(wall)}", isRight: false);
        view.Leader(new(-0.6 * strip, clasp.LowerLeafMm + clasp.StripMm / 2), $"strip {Mm(clasp.StripMm)} thick", isRight: false);
        view.Leader(new(-(strip + half - wall) / 2, clasp.LowerLeafMm + 0.1), $"play {Mm(piece.Design.Spec!.SidePlayMm)} each side", isRight: false);
        return view.Finish("SECTION D-D", "through the box's middle, towards its bar") with { IsFree = true };
    }

    private Block Pictorial(SheetScale scale, string said = "")
    {
        var view = new DrawnView(scale);
        view.Add(pictorial, line => line.IsVisible ? SheetPens.Wide : null);
        return view.Finish("ISOMETRIC", $"from the tongue's side{said}") with { IsFree = true };
    }
}
