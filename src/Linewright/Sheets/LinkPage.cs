using System.Collections.Immutable;
using Linewright.Brief;
using Linewright.Paper;
using Linewright.Parts;
using Linewright.Solids.Outlines;
using Linewright.Solids.Space;
using static Linewright.Sheets.Figures;

namespace Linewright.Sheets;

/// <summary>The link as set: three views, a section along the line, a section through two claws, a pictorial view.</summary>
internal sealed class LinkPage
{
    private static readonly OutlineSettings Seen = OutlineSettings.Fine, WithHidden = OutlineSettings.Fine with { WithHidden = true };

    private readonly Piece piece;
    private readonly LinkForm form;
    private readonly HingeForm hinge;
    private readonly Bounds size;
    private readonly OutlineView front;
    private readonly OutlineView above;
    private readonly OutlineView left;
    private readonly OutlineView along;
    private readonly OutlineView claws;
    private readonly OutlineView pictorial;

    public LinkPage(Piece piece, SheetBodies bodies, Bounds size)
    {
        (this.piece, form, hinge, this.size) = (piece, piece.Link, piece.Hinge, size);
        ImmutableArray<PlacedBody> link = [.. bodies.Link(Pose.Identity)];
        ViewFrame fromFront = ViewFrame.From(-Vec3.UnitY, Vec3.UnitZ);
        var through = new Vec3(Math.Sin(form.ClawAzimuth), -Math.Cos(form.ClawAzimuth), 0);
        var views = new OutlineView[6];
        (ViewFrame Frame, OutlineSettings Settings)[] wanted =
        [
            (fromFront, WithHidden),
            (ViewFrame.From(Vec3.UnitZ, Vec3.UnitY), Seen),
            (ViewFrame.From(-Vec3.UnitX, Vec3.UnitZ), Seen),
            (fromFront, Seen with { CutDepth = 0 }),
            (ViewFrame.From(through, Vec3.UnitZ), Seen with { CutDepth = 0 }),

            // Standard: ISO 5456-3: isometric, all three axes shortened alike.
            (ViewFrame.From(new Vec3(1, -1, 1), Vec3.UnitZ), Seen),
        ];
        Parallel.For(0, views.Length, i => views[i] = OutlineDrawer.Draw(link, wanted[i].Frame, wanted[i].Settings));
        (front, above, left, along, claws, pictorial) = (views[0], views[1], views[2], views[3], views[4], views[5]);
    }

    /// <summary>The views at true scale, side by side.</summary>
    public ImmutableArray<OutlinePlan> Plans()
    {
        // As in first angle: front, left at its right, above below it; the sections further right. One pitch and a half apart.
        double apart = 2.2 * Math.Max(form.PitchMm, size.Size.Y);
        OutlinePlan Plan(string name, OutlineView view, int column, int row) => new(
            name,
            [.. view.Lines.Select(line => line with { Points = ImmutableArray.CreateRange(line.Points, p => p + new FlatPoint(column * apart, -row * apart)) })],
            SheetBodies.StoneTag);
        return [Plan("FRONT", front, 0, 0), Plan("SIDE", left, 1, 0), Plan("TOP", above, 0, 1), Plan("SECTION_A", along, 2, 0), Plan("SECTION_B", claws, 2, 1)];
    }

    /// <summary>The page's content and its scale.</summary>
    public (SheetScale Scale, ImmutableArray<Mark> Marks) Draw(PaperBox field, Projection projection)
    {
        var scale = SheetScale.Largest(candidate => Arrange(candidate, field, projection) is { Fits: true });
        return (scale, Arrange(scale, field, projection).Marks);
    }

    /// <summary>Pen of a line: stones fine, metal wide, hidden metal dashed, hidden stones not at all.</summary>
    internal static Pen? PenOf(OutlineLine line) => (SheetBodies.IsStone(line.Tag), line.IsVisible, line.Kind) switch
    {
        (true, true, OutlineKind.Edge) => SheetPens.Facet,
        (true, true, _) => SheetPens.Narrow,
        (true, false, _) => null,
        (false, true, _) => SheetPens.Wide,
        _ => SheetPens.Hidden,
    };

    private Grid Arrange(SheetScale scale, PaperBox field, Projection projection)
    {
        Block frontBlock = Front(scale), aboveBlock = Above(scale), leftBlock = Left(scale), alongBlock = Along(scale), clawsBlock = Claws(scale), pictorialBlock = Pictorial(scale);
        Block?[,] cells = projection == Projection.FirstAngle
            ? new Block?[,] { { frontBlock, leftBlock, alongBlock }, { aboveBlock, clawsBlock, pictorialBlock } }
            : new Block?[,] { { clawsBlock, aboveBlock, pictorialBlock }, { leftBlock, frontBlock, alongBlock } };
        return Grid.Lay(cells, field);
    }

    private Block Front(SheetScale scale)
    {
        var view = new DrawnView(scale);
        view.Add(front, line => PenOf(line) is { } pen && (line.IsVisible || line.Kind == OutlineKind.Edge || IsBore(line)) ? pen : null);
        Hinges(view);
        view.Axis(new FlatPoint(0, 0), new FlatPoint(0, form.TableHeightMm));
        double low = hinge.HeightMm;
        view.Dimension(DrawnView.Side.Below, new(form.BarAxis.X, low), new(form.NextBarAxis.X, low), $"{Fine(form.PitchMm)} pitch");
        view.Dimension(DrawnView.Side.Below, new(-form.BaseHalfXMm, 0), new(form.BaseHalfXMm, 0), Mm(2 * form.BaseHalfXMm));
        view.Dimension(DrawnView.Side.Below, new(size.Low.X, low), new(size.High.X, low), $"({Mm(size.Size.X)})");
        view.Dimension(DrawnView.Side.Left, new(form.BarAxis.X, 0), new(form.BarAxis.X, low), Mm(low));
        view.Dimension(DrawnView.Side.Left, new(0, 0), new(0, form.TableHeightMm), $"{Mm(form.TableHeightMm)} table");
        view.Leader(new(form.EyeCentre.X + hinge.EyeRadiusMm * Math.Cos(0.6), low + hinge.EyeRadiusMm * Math.Sin(0.6)), $"eye {Radius(hinge.EyeRadiusMm)}");
        return view.Finish("FRONT");
    }

    // Hidden lines that say something: the bore and the bar, seen along their axis. Others would only cover the view.
    private bool IsBore(OutlineLine line) => line.Points.All(p =>
        Near(p, form.BarAxis, hinge.BarMm / 2) || Near(p, form.EyeCentre, hinge.HoleMm / 2));

    private static bool Near(FlatPoint p, Vec3 axis, double radius) => Math.Abs(new FlatPoint(p.X - axis.X, p.Y - axis.Z).Length - radius) < 0.03;

    private Block Above(SheetScale scale)
    {
        var view = new DrawnView(scale);
        view.Add(above, PenOf);
        double reachX = form.ClawReachMm * Math.Cos(form.ClawAzimuth), reachY = form.ClawReachMm * Math.Sin(form.ClawAzimuth), half = form.StoneMm / 2;
        view.Axis(new(0, -half), new(0, half));
        view.CuttingPlane(new(size.Low.X, 0), new(size.High.X, 0), new(0, 1), "A");
        var cut = new FlatPoint(Math.Cos(form.ClawAzimuth), Math.Sin(form.ClawAzimuth)) * (form.ClawReachMm + form.ClawRadiusMm);
        view.CuttingPlane(cut * -1, cut, new FlatPoint(-Math.Sin(form.ClawAzimuth), Math.Cos(form.ClawAzimuth)), "B");
        view.Dimension(DrawnView.Side.Below, new(-reachX, -reachY), new(reachX, -reachY), Mm(2 * reachX));
        view.Dimension(DrawnView.Side.Left, new(-reachX, -reachY), new(-reachX, reachY), $"{Mm(2 * reachY)} claws");
        view.Dimension(DrawnView.Side.Right, new(size.High.X, -hinge.EyeWidthMm / 2), new(size.High.X, hinge.EyeWidthMm / 2), $"{Mm(hinge.EyeWidthMm)} eye");
        view.Leader(new FlatPoint(Math.Cos(-0.9), Math.Sin(-0.9)) * half, $"stone {Dia(form.StoneMm)}");
        view.Leader(new(reachX + 0.7 * form.ClawRadiusMm, reachY + 0.5 * form.ClawRadiusMm), $"4 claws {Dia(2 * form.ClawRadiusMm)} at {Angle(form.ClawAzimuth)}");
        return view.Finish("TOP");
    }

    private Block Left(SheetScale scale)
    {
        // Looking along the line from its bar: y runs to the left.
        var view = new DrawnView(scale);
        view.Add(left, PenOf);
        view.Axis(new(0, 0), new(0, form.TableHeightMm));
        view.Axis(new(-hinge.CheekOuterMm, hinge.HeightMm), new(hinge.CheekOuterMm, hinge.HeightMm));
        view.Dimension(DrawnView.Side.Below, new(-hinge.CheekInnerMm, hinge.HeightMm), new(hinge.CheekInnerMm, hinge.HeightMm), $"{Mm(2 * hinge.CheekInnerMm)}");
        view.Dimension(DrawnView.Side.Below, new(-hinge.CheekOuterMm, hinge.HeightMm), new(hinge.CheekOuterMm, hinge.HeightMm), $"{Mm(2 * hinge.CheekOuterMm)} cheeks");
        view.Dimension(DrawnView.Side.Below, new(-size.High.Y, 0.1 * form.TableHeightMm), new(size.High.Y, 0.1 * form.TableHeightMm), $"({Mm(size.Size.Y)})");
        view.Dimension(DrawnView.Side.Right, new(form.StopYMm, 0), new(form.StopYMm, form.StopHighMm), $"{Mm(form.StopHighMm)} stop");
        view.Dimension(DrawnView.Side.Right, new(size.High.Y, 0), new(form.ClawFootYMm, size.High.Z), $"({Mm(size.High.Z)})");
        return view.Finish("LEFT SIDE");
    }

    private Block Along(SheetScale scale)
    {
        var view = new DrawnView(scale);
        view.Add(along, PenOf);
        Cuts(view, along);
        Hinges(view);
        view.Axis(new(0, 0), new(0, form.TableHeightMm));
        double culet = hinge.CuletMm, girdle = form.GirdleHeightMm, half = form.StoneMm / 2;
        view.Dimension(DrawnView.Side.Left, new(0, 0), new(0, culet), $"{Mm(culet)} culet");
        view.Dimension(DrawnView.Side.Left, new(-half, 0), new(-half, girdle), $"{Mm(girdle)} girdle");
        view.Dimension(DrawnView.Side.Below, new(form.BarAxis.X, hinge.HeightMm), new(form.EyeCentre.X, hinge.HeightMm), Fine(form.PitchMm - hinge.PlayMm));
        Vec3 bar = form.BarAxis, eye = form.EyeCentre;
        var isPinned = hinge.Kind == HingeKind.PinnedKnuckles;
        view.Leader(new(bar.X - 0.35 * hinge.BarMm, bar.Z - 0.35 * hinge.BarMm), $"{(isPinned ? "pin" : "bar")} {Dia(hinge.BarMm)}", isRight: false);
        view.Leader(new(eye.X + hinge.HoleMm / 2 * Math.Cos(-0.5), eye.Z + hinge.HoleMm / 2 * Math.Sin(-0.5)), $"hole {Dia(hinge.HoleMm)}");
        view.Leader(new(eye.X + hinge.EyeRadiusMm * Math.Cos(0.5), eye.Z + hinge.EyeRadiusMm * Math.Sin(0.5)), $"wall {Mm(hinge.EyeRadiusMm - hinge.HoleMm / 2)}");
        return view.Finish("SECTION A-A", "along the line; stone not hatched");
    }

    private Block Claws(SheetScale scale)
    {
        var view = new DrawnView(scale);
        view.Add(claws, PenOf);
        Cuts(view, claws);
        view.Axis(new(0, 0), new(0, form.TableHeightMm));
        double girdle = form.GirdleHeightMm, half = form.StoneMm / 2, reach = form.ClawReachMm, radius = form.ClawRadiusMm;
        view.Leader(new(half - 0.2 * form.SeatMm, girdle), $"seat {Mm(form.SeatMm)} deep");
        view.Leader(new(reach + radius, girdle - 0.3), $"claw {Dia(2 * radius)}");
        view.Leader(new(form.TipReachMm, form.TipHeightMm + 0.7 * form.TipRadiusMm), $"cover {Mm(piece.Design.Spec!.CoverMm)}");
        view.Dimension(DrawnView.Side.Below, new(-reach, girdle), new(reach, girdle), $"{Mm(2 * reach)} claw axes");
        view.Dimension(DrawnView.Side.Left, new(-half, 0), new(-half, form.UpperTopMm), $"{Mm(form.UpperTopMm)} rail");
        return view.Finish("SECTION B-B", "through two claws");
    }

    private Block Pictorial(SheetScale scale)
    {
        var view = new DrawnView(scale);
        view.Add(pictorial, PenOf);
        return view.Finish("ISOMETRIC", "as set");
    }

    private void Hinges(DrawnView view)
    {
        foreach (var axis in (Vec3[])[form.BarAxis, form.NextBarAxis])
        {
            view.Centre(new(axis.X, axis.Z), hinge.EyeRadiusMm);
        }
    }

    // Neighbouring parts are hatched the other way round; stones are not.
    internal static void Cuts(DrawnView view, OutlineView section)
    {
        foreach (var cut in section.Cuts.Where(cut => !SheetBodies.IsStone(cut.Tag)))
        {
            view.Hatch(cut, (cut.Tag + cut.Tag / 100) % 2 == 1);
        }
    }
}
