using System.Collections.Immutable;
using Linewright.Brief;
using Linewright.Paper;
using Linewright.Parts;
using Linewright.Solids.Outlines;
using Linewright.Solids.Space;
using static Linewright.Sheets.Figures;

namespace Linewright.Sheets;

/// <summary>The link as set: three views and a pictorial one; sections along the line and through two claws, and of a joint along and across.</summary>
internal sealed class LinkPage
{
    // A drawn line that is meant to lie at a radius does so within the settings of a drawing and the coarsest mesh. mm.
    private const double OnLineMm = 0.03;

    private readonly Piece piece;
    private readonly LinkForm form;
    private readonly HingeForm hinge;
    private readonly Bounds size;
    private readonly JointBend bend;
    private readonly OutlineView front;
    private readonly OutlineView above;
    private readonly OutlineView left;
    private readonly OutlineView along;
    private readonly OutlineView claws;
    private readonly OutlineView pictorial;
    private readonly OutlineView jointAlong;
    private readonly OutlineView jointAcross;

    public LinkPage(Piece piece, SheetBodies bodies, Bounds size, JointBend bend)
    {
        (this.piece, form, hinge, this.size, this.bend) = (piece, piece.Link, piece.Hinge, size, bend);
        OutlineSettings seen = bodies.Settings, withHidden = seen with { WithHidden = true };
        ImmutableArray<PlacedBody> link = [.. bodies.Link(Pose.Identity)];
        ViewFrame fromFront = ViewFrame.From(-Vec3.UnitY, Vec3.UnitZ);
        var through = new Vec3(Math.Sin(form.ClawAzimuth), -Math.Cos(form.ClawAzimuth), 0);
        ImmutableArray<PlacedBody> pair = [.. link, .. bodies.Link(Pose.Move(form.PitchMm, 0, 0), 100)];
        (ImmutableArray<PlacedBody> Bodies, ViewFrame Frame, OutlineSettings Settings)[] wanted =
        [
            (link, fromFront, withHidden),
            (link, ViewFrame.From(Vec3.UnitZ, Vec3.UnitY), seen),
            (link, ViewFrame.From(-Vec3.UnitX, Vec3.UnitZ), seen),
            (link, fromFront, seen with { CutDepth = 0 }),
            (link, ViewFrame.From(through, Vec3.UnitZ), seen with { CutDepth = 0 }),

            // Standard: ISO 5456-3: isometric, all three axes shortened alike.
            (link, ViewFrame.From(new Vec3(1, -1, 1), Vec3.UnitZ), seen),
            (pair, fromFront, seen with { CutDepth = 0 }),
            (pair, ViewFrame.From(Vec3.UnitZ, Vec3.UnitY), seen with { CutDepth = hinge.HeightMm }),
        ];
        var views = new OutlineView[wanted.Length];
        Parallel.For(0, views.Length, i => views[i] = OutlineDrawer.Draw(wanted[i].Bodies, wanted[i].Frame, wanted[i].Settings));
        (front, above, left, along, claws, pictorial, jointAlong, jointAcross) = (views[0], views[1], views[2], views[3], views[4], views[5], views[6], views[7]);
    }

    /// <summary>The views at true scale, side by side as the projection wants them, the sections further right.</summary>
    public ImmutableArray<OutlinePlan> Plans(Projection projection)
    {
        double apart = 2.2 * Math.Max(form.PitchMm, size.Size.Y);
        var (side, top) = projection == Projection.FirstAngle ? (1, -1) : (-1, 1);
        OutlinePlan Plan(string name, string title, OutlineView view, int right, int up)
        {
            var origin = new FlatPoint(right * apart, up * apart);
            ImmutableArray<OutlineLine> lines = [.. view.Lines.Select(line => line with { Points = ImmutableArray.CreateRange(line.Points, p => p + origin) })];
            return new OutlinePlan(name, title, lines, SheetBodies.StoneTag);
        }

        return
        [
            Plan("FRONT", "FRONT", front, 0, 0), Plan("SIDE", "LEFT SIDE", left, side, 0), Plan("TOP", "TOP", above, 0, top),
            Plan("SECTION_A", "SECTION A-A", along, 2, 0), Plan("SECTION_B", "SECTION B-B", claws, 2, top),
        ];
    }

    /// <summary>The page's content and its scale.</summary>
    public (SheetScale Scale, ImmutableArray<Mark> Marks) Draw(PaperBox field, Projection projection)
        => Grid.Largest(scale => Cells(scale, projection), field);

    /// <summary>The sections, on one page, or on two where the joint would be drawn smaller than the link.</summary>
    public ImmutableArray<DrawnPage> DrawSections(PaperBox field, SheetScale ofLink) => DrawnPage.Lay(
        new("sections of link and joint", scale => new Block?[,] { { Along(scale), JointAlong(scale) }, { Claws(scale), JointAcross(scale) } }),
        new("sections of the link", scale => new Block?[,] { { Along(scale), Claws(scale) } }),
        new("sections of the joint", scale => new Block?[,] { { JointAlong(scale) }, { JointAcross(scale) } }),
        field,
        ofLink);

    /// <summary>Pen of a line: stones fine, metal wide, hidden metal dashed, hidden stones not at all.</summary>
    internal static Pen? PenOf(OutlineLine line) => (SheetBodies.IsStone(line.Tag), line.IsVisible, line.Kind) switch
    {
        (true, true, OutlineKind.Edge) => SheetPens.Facet,
        (true, true, _) => SheetPens.Narrow,
        (true, false, _) => null,
        (false, true, _) => SheetPens.Wide,
        _ => SheetPens.Hidden,
    };

    private Block?[,] Cells(SheetScale scale, Projection projection)
    {
        Block frontBlock = Front(scale), aboveBlock = Above(scale), leftBlock = Left(scale), pictorialBlock = Pictorial(scale);
        return projection == Projection.FirstAngle
            ? new Block?[,] { { frontBlock, leftBlock }, { aboveBlock, pictorialBlock } }
            : new Block?[,] { { pictorialBlock, aboveBlock }, { leftBlock, frontBlock } };
    }

    private Block Front(SheetScale scale)
    {
        var view = new DrawnView(scale);
        view.Add(front, line => line.IsVisible || IsBore(line) ? PenOf(line) : null);
        Hinges(view);
        view.Axis(new FlatPoint(0, 0), new FlatPoint(0, form.TableHeightMm));
        double low = hinge.HeightMm;
        view.Dimension(DrawnView.Side.Below, new(form.BarAxis.X, low), new(form.NextBarAxis.X, low), $"{Fine(form.PitchMm)} pitch");
        view.Dimension(DrawnView.Side.Below, new(-form.BaseHalfXMm, 0), new(form.BaseHalfXMm, 0), $"{Mm(2 * form.BaseHalfXMm)} base");
        view.Dimension(DrawnView.Side.Below, new(size.Low.X, low), new(size.High.X, low), $"({Mm(size.Size.X)})");
        view.Dimension(DrawnView.Side.Left, new(form.BarAxis.X, 0), new(form.BarAxis.X, low), $"{Mm(low)} axis");
        view.Dimension(DrawnView.Side.Left, new(-form.BaseHalfXMm, 0), new(-form.StoneMm * piece.Design.Brief.Stone.TablePercent / 200, form.TableHeightMm), $"{Mm(form.TableHeightMm)} table");
        view.Leader(new(form.EyeCentre.X + hinge.EyeRadiusMm * Math.Cos(0.6), low + hinge.EyeRadiusMm * Math.Sin(0.6)), $"eye {Radius(hinge.EyeRadiusMm)}");
        return view.Finish("FRONT");
    }

    // Hidden lines that say something: the bore and the bar, seen along their axis. Others would only cover the view.
    private bool IsBore(OutlineLine line) => line.Points.All(p =>
        Near(p, form.BarAxis, hinge.BarMm / 2) || Near(p, form.EyeCentre, hinge.HoleMm / 2));

    private static bool Near(FlatPoint p, Vec3 axis, double radius) => Math.Abs(new FlatPoint(p.X - axis.X, p.Y - axis.Z).Length - radius) < OnLineMm;

    private Block Above(SheetScale scale)
    {
        var view = new DrawnView(scale);
        view.Add(above, PenOf);
        double reachX = form.ClawReachMm * Math.Cos(form.ClawAzimuth), reachY = form.ClawReachMm * Math.Sin(form.ClawAzimuth), half = form.StoneMm / 2;
        view.Axis(new(0, -half), new(0, half));
        view.CuttingPlane(new(size.Low.X, 0), new(size.High.X, 0), new(0, 1), "A");
        var cut = new FlatPoint(Math.Cos(form.ClawAzimuth), Math.Sin(form.ClawAzimuth)) * (form.ClawReachMm + form.ClawRadiusMm);
        view.CuttingPlane(cut * -1, cut, new FlatPoint(-Math.Sin(form.ClawAzimuth), Math.Cos(form.ClawAzimuth)), "B");
        view.Dimension(DrawnView.Side.Below, new(-reachX, -reachY), new(reachX, -reachY), $"{Mm(2 * reachX)} claws");
        view.Dimension(DrawnView.Side.Left, new(-reachX, -reachY), new(-reachX, reachY), $"{Mm(2 * reachY)} claws");

        // Where no claw lies over the girdle; the claw is one that no section goes through.
        var free = 0.6 * (form.ClawAzimuth - Math.Asin(Math.Min(1, form.ClawRadiusMm / form.ClawReachMm)));
        view.Leader(new FlatPoint(Math.Cos(free), Math.Sin(free)) * half, $"stone {Dia(form.StoneMm)}");
        view.Leader(new(reachX + 0.7 * form.ClawRadiusMm, -reachY - 0.5 * form.ClawRadiusMm), $"4 claws {Dia(2 * form.ClawRadiusMm)}, {Angle(form.ClawAzimuth)} off A-A");
        return view.Finish("TOP");
    }

    private Block Left(SheetScale scale)
    {
        // Looking along the line from its bar: y runs to the left.
        var view = new DrawnView(scale);
        view.Add(left, PenOf);
        view.Axis(new(0, 0), new(0, form.TableHeightMm));
        view.Axis(new(-hinge.CheekOuterMm, hinge.HeightMm), new(hinge.CheekOuterMm, hinge.HeightMm));
        view.Dimension(DrawnView.Side.Below, new(-hinge.CheekInnerMm, hinge.HeightMm), new(hinge.CheekInnerMm, hinge.HeightMm), Mm(2 * hinge.CheekInnerMm));
        view.Dimension(DrawnView.Side.Below, new(-hinge.CheekOuterMm, hinge.HeightMm), new(hinge.CheekOuterMm, hinge.HeightMm), $"{Mm(2 * hinge.CheekOuterMm)} cheeks");
        view.Dimension(DrawnView.Side.Below, new(-size.High.Y, 0.1 * form.TableHeightMm), new(size.High.Y, 0.1 * form.TableHeightMm), $"({Mm(size.Size.Y)})");
        view.Dimension(DrawnView.Side.Right, new(form.StopYMm, 0), new(form.StopYMm, form.StopHighMm), $"{Mm(form.StopHighMm)} stop");
        view.Dimension(DrawnView.Side.Right, new(size.High.Y, 0), new(form.ClawFootYMm, size.High.Z), $"({Mm(size.High.Z)}) claws");
        return view.Finish("LEFT SIDE");
    }

    private Block Along(SheetScale scale)
    {
        var view = new DrawnView(scale);
        view.Add(along, PenOf);
        Cuts(view, along);
        Hinges(view);
        view.Axis(new(0, 0), new(0, form.TableHeightMm));
        view.Dimension(DrawnView.Side.Below, new(form.BarAxis.X, hinge.HeightMm), new(form.EyeCentre.X, hinge.HeightMm), $"{Fine(form.PitchMm - hinge.PlayMm)} bar to eye");
        Vec3 bar = form.BarAxis, eye = form.EyeCentre;
        var isPinned = hinge.Kind == HingeKind.PinnedKnuckles;
        view.Dimension(DrawnView.Side.Above, new(bar.X - hinge.BarMm / 2, bar.Z), new(bar.X + hinge.BarMm / 2, bar.Z), $"{Dia(hinge.BarMm)} {(isPinned ? "pin" : "bar")}");
        view.Leader(new(eye.X + hinge.HoleMm / 2 * Math.Cos(-0.5), eye.Z + hinge.HoleMm / 2 * Math.Sin(-0.5)), $"hole {Dia(hinge.HoleMm)}");
        view.Leader(new(eye.X + hinge.EyeRadiusMm * Math.Cos(0.5), eye.Z + hinge.EyeRadiusMm * Math.Sin(0.5)), $"wall {Mm(hinge.EyeRadiusMm - hinge.HoleMm / 2)}");
        return view.Finish("SECTION A-A", "along the line; stone not hatched") with { IsFree = true };
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
        view.Dimension(DrawnView.Side.Left, new(0, 0), new(0, hinge.CuletMm), $"{Mm(hinge.CuletMm)} culet");
        view.Dimension(DrawnView.Side.Left, new(-form.UpperOuterMm, 0), new(-form.UpperOuterMm, form.UpperTopMm), $"{Mm(form.UpperTopMm)} rail");
        view.Dimension(DrawnView.Side.Left, new(-half, 0), new(-half, girdle), $"{Mm(girdle)} girdle");
        view.Dimension(DrawnView.Side.Above, new(-half, girdle), new(half, girdle), Dia(form.StoneMm));
        return view.Finish("SECTION B-B", "through two claws") with { IsFree = true };
    }

    private Block JointAlong(SheetScale scale)
    {
        var view = new DrawnView(scale);
        view.Add(jointAlong, PenOf);
        Cuts(view, jointAlong);
        double girdle = form.GirdleHeightMm, half = form.StoneMm / 2, p = form.PitchMm;
        foreach (var x in (double[])[-p / 2, p / 2, 3 * p / 2])
        {
            view.Centre(new(x, hinge.HeightMm), hinge.EyeRadiusMm);
        }

        view.Axis(new(0, 0), new(0, form.TableHeightMm));
        view.Axis(new(p, 0), new(p, form.TableHeightMm));
        view.Dimension(DrawnView.Side.Above, new(0, form.TableHeightMm), new(p, form.TableHeightMm), $"{Fine(p)} pitch");
        view.Dimension(DrawnView.Side.Above, new(half, girdle), new(p - half, girdle), $"{Mm(p - form.StoneMm)} between girdles");

        // Taut, the bar lies against the far side of its hole: the gap is as wide as it says over the bar.
        view.Leader(new(p / 2, hinge.HeightMm + hinge.BarMm / 2 + hinge.PlayMm / 2), $"play {Fine(hinge.PlayMm)} radial");
        var (clears, window) = ($"window {Radius(hinge.EyeSweepMm)}", OnWindow());
        if (window is { } at)
        {
            view.Leader(at, clears);
        }

        return view.Finish("JOINT, SECTION A-A, TAUT", $"bends {bend.Outward} back to its stops, {bend.Inward} in{(window is null ? $"; {clears}" : "")}") with { IsFree = true };
    }

    // Where the second link is cut along the round that clears the first one's eye; null where the gallery is open there.
    private FlatPoint? OnWindow()
    {
        var axis = new FlatPoint(form.PitchMm / 2, hinge.HeightMm);
        var looked = axis + new FlatPoint(Math.Cos(-0.75), Math.Sin(-0.75)) * hinge.EyeSweepMm;
        var found = jointAlong.Lines.Where(line => line.Kind == OutlineKind.Cut && line.Tag >= 100 && !SheetBodies.IsStone(line.Tag)).SelectMany(line => line.Points)
            .Where(p => Math.Abs((p - axis).Length - hinge.EyeSweepMm) < OnLineMm && (p - looked).Length < 0.7 * hinge.EyeSweepMm).ToList();
        return found.Count == 0 ? null : found.MinBy(p => (p - looked).Length);
    }

    private Block JointAcross(SheetScale scale)
    {
        var view = new DrawnView(scale);
        view.Add(jointAcross, PenOf);
        var pin = piece.Find(PartRole.Pin) is { } part ? piece.Parts.IndexOf(part) : -1;
        Cuts(view, jointAcross, tag => tag % 100 == pin);
        var x = form.PitchMm / 2;
        view.Axis(new(x, -hinge.CheekOuterMm), new(x, hinge.CheekOuterMm));
        view.Axis(new(-form.PitchMm / 2, 0), new(1.5 * form.PitchMm, 0));
        double eye = hinge.EyeWidthMm / 2, inner = hinge.CheekInnerMm, outer = hinge.CheekOuterMm;
        view.Dimension(DrawnView.Side.Left, new(x, -eye), new(x, eye), $"{Mm(hinge.EyeWidthMm)} eye");
        view.Dimension(DrawnView.Side.Left, new(x, -outer), new(x, outer), $"{Mm(2 * outer)} cheeks");
        view.Leader(new(x, (eye + inner) / 2), $"gap 2 \u00d7 {Mm(hinge.SideClearanceMm)}");
        view.Leader(new(x, -(inner + outer) / 2), $"cheek {Mm(hinge.CheekMm)}");
        view.Leader(new(x, 0.3 * eye), $"{(hinge.Kind == HingeKind.PinnedKnuckles ? "pin" : "bar")} {Dia(hinge.BarMm)}");
        var under = hinge.CuletMm < hinge.HeightMm ? "from above; the stones are above it but for their culets, not hatched" : "from above; the stones are above it";
        return view.Finish("JOINT, CUT AT THE HINGE AXIS", under) with { IsFree = true };
    }

    private Block Pictorial(SheetScale scale)
    {
        var view = new DrawnView(scale);
        view.Add(pictorial, PenOf);
        return view.Finish("ISOMETRIC", "as set") with { IsFree = true };
    }

    private void Hinges(DrawnView view)
    {
        foreach (var axis in (Vec3[])[form.BarAxis, form.NextBarAxis])
        {
            view.Centre(new(axis.X, axis.Z), hinge.EyeRadiusMm);
        }
    }

    /// <summary>Hatches cut metal, neighbours the other way round.</summary>
    /// <param name="view">Where.</param>
    /// <param name="section">What was cut.</param>
    /// <param name="isWhole">What stays as it is although the plane runs through it: a pin along its axis. Standard: ISO 128-3.</param>
    internal static void Cuts(DrawnView view, OutlineView section, Func<int, bool>? isWhole = null)
    {
        foreach (var cut in section.Cuts.Where(cut => !SheetBodies.IsStone(cut.Tag) && isWhole?.Invoke(cut.Tag) != true))
        {
            view.Hatch(cut, (cut.Tag + cut.Tag / 100) % 2 == 1);
        }
    }
}
