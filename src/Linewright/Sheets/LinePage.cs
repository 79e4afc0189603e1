using System.Collections.Immutable;
using Linewright.Brief;
using Linewright.Layout;
using Linewright.Paper;
using Linewright.Parts;
using Linewright.Solids.Outlines;
using Linewright.Solids.Space;
using static Linewright.Sheets.Figures;

namespace Linewright.Sheets;

/// <summary>The whole line: pulled taut on a table, closed round a wrist, and one joint cut open along and across.</summary>
/// <remarks>
/// Links that stand between two links at the same angle look alike: one is drawn between its neighbours and repeated. The
/// first, the last and the clasp are drawn for themselves.
/// </remarks>
internal sealed class LinePage
{
    private const int NeighbourTags = 100;

    private readonly Piece piece;
    private readonly SheetBodies bodies;
    private readonly LinkForm form;
    private readonly HingeForm hinge;
    private readonly LineCandidate layout;
    private readonly WristFit? ring;
    private readonly List<OutlineLine> flat;
    private readonly List<OutlineLine> closed;
    private readonly OutlineView jointAlong;
    private readonly OutlineView jointAcross;

    public LinePage(Piece piece, SheetBodies bodies)
    {
        (this.piece, this.bodies, form, hinge, layout) = (piece, bodies, piece.Link, piece.Hinge, piece.Layout);

        // Round, as the inside circumference is meant.
        ring = WristFit.Solve(layout.Chain, 1, 2).Fit;
        List<OutlineLine> flatLines = [], closedLines = [];
        OutlineView? across = null, cut = null;
        ImmutableArray<PlacedBody> pair = [.. bodies.Link(Pose.Identity), .. bodies.Link(Pose.Move(form.PitchMm, 0, 0), NeighbourTags)];
        var fine = OutlineSettings.Fine;
        Parallel.Invoke(
            () => flatLines = Run(FlatFit.Solve(layout.Chain).Placements, ViewFrame.From(Vec3.UnitZ, Vec3.UnitY), isRing: false),
            () => closedLines = ring is null ? [] : Run(ring.Placements, ViewFrame.From(-Vec3.UnitY, Vec3.UnitZ), isRing: true),
            () => cut = OutlineDrawer.Draw(pair, ViewFrame.From(-Vec3.UnitY, Vec3.UnitZ), fine with { CutDepth = 0 }),
            () => across = OutlineDrawer.Draw(pair, ViewFrame.From(Vec3.UnitZ, Vec3.UnitY), fine with { CutDepth = hinge.HeightMm }));
        (flat, closed, jointAlong, jointAcross) = (flatLines, closedLines, cut!, across!);
    }

    /// <summary>The page's content and the scale of its main view.</summary>
    public (string Scale, ImmutableArray<Mark> Marks) Draw(PaperBox field)
    {
        // The flat line above, over the whole width; the ring and the joint below share what is left.
        var flatScale = SheetScale.Largest(scale => Flat(scale) is var block && block.Box.Width <= field.Width && block.Box.Height <= 0.4 * field.Height, most: 2);
        var flatBlock = Flat(flatScale);
        var rest = field with { Top = field.Top + flatBlock.Box.Height + 5 };
        var ringScale = SheetScale.Largest(scale => Ring(scale) is var block && block.Box.Height <= rest.Height && block.Box.Width <= 0.5 * rest.Width, most: 2);
        var ringBlock = Ring(ringScale);
        var side = rest with { Left = rest.Left + ringBlock.Box.Width + 8 };
        var jointScale = SheetScale.Largest(scale =>
            Along(scale) is var along && Across(scale) is var across
            && Math.Max(along.Box.Width, across.Box.Width) <= side.Width && along.Box.Height + across.Box.Height + 5 <= side.Height);
        Block alongBlock = Along(jointScale), acrossBlock = Across(jointScale);
        var air = (side.Height - alongBlock.Box.Height - acrossBlock.Box.Height) / 3;
        var marks = ImmutableArray.CreateBuilder<Mark>();
        marks.AddRange(flatBlock.CentredAt(new PaperPoint(field.Centre.X, field.Top + flatBlock.Box.Height / 2)));
        marks.AddRange(ringBlock.CentredAt(new PaperPoint(rest.Left + ringBlock.Box.Width / 2 + 2, rest.Centre.Y)));
        marks.AddRange(alongBlock.CentredAt(new PaperPoint(side.Centre.X, side.Top + air + alongBlock.Box.Height / 2)));
        marks.AddRange(acrossBlock.CentredAt(new PaperPoint(side.Centre.X, side.Bottom - air - acrossBlock.Box.Height / 2)));
        return (flatScale.Text, marks.ToImmutable());
    }

    /// <summary>All lines of the line in one position, each kind of neighbourhood drawn once.</summary>
    private List<OutlineLine> Run(ImmutableArray<LinkPlacement> places, ViewFrame frame, bool isRing)
    {
        var count = places.Length;
        var lines = new List<OutlineLine>();
        var settings = OutlineSettings.Fine with { SameMm = 0.04, StraightMm = 0.008, ShortestMm = 0.15 };
        ImmutableArray<OutlineLine> between = [];
        for (var i = 0; i < count; i++)
        {
            var isUsual = i > 0 && i < count - 2;
            if (isUsual && !between.IsEmpty)
            {
                var step = places[1].Pose.Inverse().Then(places[i].Pose);
                lines.AddRange(between.Select(line => Moved(line, frame, step)));
                continue;
            }

            // With the neighbours that there are: the flat line has ends.
            var scene = new List<PlacedBody>();
            foreach (var (offset, tags) in ((int, int)[])[(0, 0), (-1, NeighbourTags), (1, 2 * NeighbourTags)])
            {
                var at = isRing ? (i + offset + count) % count : i + offset;
                if (at >= 0 && at < count)
                {
                    scene.AddRange(places[at].IsClasp
                        ? bodies.Clasp(Pose.Move(-piece.Clasp.LengthMm / 2, 0, 0).Then(places[at].Pose), tags)
                        : bodies.Link(places[at].Pose, tags));
                }
            }

            ImmutableArray<OutlineLine> own = [.. OutlineDrawer.Draw(scene, frame, settings).Lines.Where(line => line.Tag < NeighbourTags)];
            between = isUsual ? own : between;
            lines.AddRange(own);
        }

        return lines;
    }

    private static OutlineLine Moved(OutlineLine line, ViewFrame frame, Pose step)
    {
        FlatPoint origin = frame.Flat(step.Origin);
        FlatPoint right = frame.Flat(step.Direction(frame.Right)), up = frame.Flat(step.Direction(frame.Up));
        return line with { Points = ImmutableArray.CreateRange(line.Points, p => origin + right * p.X + up * p.Y) };
    }

    // Small: everything narrow but the outlines of metal, and of a stone only its table and girdle.
    private static Pen? SmallPen(OutlineLine line) => SheetBodies.IsStone(line.Tag) ? SheetPens.Facet : SheetPens.Narrow;

    private Block Flat(SheetScale scale)
    {
        var view = new DrawnView(scale);
        foreach (var line in flat)
        {
            view.Add(line.Points, SmallPen(line)!.Value);
        }

        double half = form.PitchMm / 2, start = -half, end = start + layout.Count * form.PitchMm, clasp = end + layout.ClaspMm, side = form.WidthMm / 2;
        view.Axis(new(start, 0), new(clasp, 0));
        view.Dimension(DrawnView.Side.Below, new(start, -side), new(end, -side), $"{Count(layout.Count)} links x {Fine(form.PitchMm)} = {Mm(layout.Count * form.PitchMm)}");
        view.Dimension(DrawnView.Side.Below, new(end, -side), new(clasp, -side), Mm(layout.ClaspMm));
        view.Dimension(DrawnView.Side.Below, new(start, -side), new(clasp, -side), $"{Mm(layout.LaidFlatMm)} laid flat, taut, through the hinge axes");
        return view.Finish("LINE, LAID FLAT", $"from above, scale {scale.Text}; link 1 at the left, its bar joins the tongue's eye when closed");
    }

    private Block Ring(SheetScale scale)
    {
        var view = new DrawnView(scale);
        foreach (var line in closed)
        {
            view.Add(line.Points, SmallPen(line)!.Value);
        }

        if (ring is null)
        {
            return view.Finish("LINE, CLOSED", "the line does not close round a wrist");
        }

        var radius = ring.Form.PerimeterMm / (2 * Math.PI);
        view.Add(Enumerable.Range(0, 181).Select(i => new FlatPoint(Math.Cos(i * Math.PI / 90), Math.Sin(i * Math.PI / 90)) * radius), SheetPens.Axis);
        view.Centre(new(0, 0), 2 / scale.Factor);
        view.Dimension(DrawnView.Side.Above, new(-radius, 0), new(radius, 0), $"{Dia(2 * radius)} inside");
        return view.Finish(
            "LINE, CLOSED ROUND",
            $"scale {scale.Text}; inside circumference {Mm(layout.Fit.InsideCircumferenceMm)}; {Number(layout.Fit.HingeAngleDeg, 1)}\u00b0 from link to link, {Number(layout.Fit.ClaspHingeAngleDeg, 1)}\u00b0 at the clasp");
    }

    private Block Along(SheetScale scale)
    {
        var view = new DrawnView(scale);
        view.Add(jointAlong, LinkPage.PenOf);
        LinkPage.Cuts(view, jointAlong);
        double girdle = form.GirdleHeightMm, half = form.StoneMm / 2, p = form.PitchMm;
        foreach (var x in (double[])[-p / 2, p / 2, 3 * p / 2])
        {
            view.Centre(new(x, hinge.HeightMm), hinge.EyeRadiusMm);
        }

        view.Axis(new(0, 0), new(0, form.TableHeightMm));
        view.Axis(new(p, 0), new(p, form.TableHeightMm));
        view.Dimension(DrawnView.Side.Above, new(0, form.TableHeightMm), new(p, form.TableHeightMm), $"{Fine(p)} pitch");
        view.Dimension(DrawnView.Side.Above, new(half, girdle), new(p - half, girdle), $"{Mm(p - form.StoneMm)} between girdles");
        view.Leader(new(p / 2 + hinge.BarMm / 2, hinge.HeightMm), $"play {Fine(hinge.PlayMm)} radial");
        view.Leader(new(p / 2 + hinge.EyeSweepMm * Math.Cos(-0.75), hinge.HeightMm + hinge.EyeSweepMm * Math.Sin(-0.75)), $"window {Radius(hinge.EyeSweepMm)}");
        return view.Finish("JOINT, SECTION A-A, TAUT", $"scale {scale.Text}; bends {Angle(2 * form.OutwardHalf)} back to its stops, {Angle(2 * form.InwardHalf)} in");
    }

    private Block Across(SheetScale scale)
    {
        var view = new DrawnView(scale);
        view.Add(jointAcross, LinkPage.PenOf);
        LinkPage.Cuts(view, jointAcross);
        var x = form.PitchMm / 2;
        view.Axis(new(x, -hinge.CheekOuterMm), new(x, hinge.CheekOuterMm));
        view.Axis(new(-form.PitchMm / 2, 0), new(1.5 * form.PitchMm, 0));
        double eye = hinge.EyeWidthMm / 2, inner = hinge.CheekInnerMm, outer = hinge.CheekOuterMm;
        view.Dimension(DrawnView.Side.Left, new(x, -eye), new(x, eye), Mm(hinge.EyeWidthMm));
        view.Dimension(DrawnView.Side.Left, new(x, -outer), new(x, outer), Mm(2 * outer));
        view.Leader(new(x, (eye + inner) / 2), $"gap {Mm(hinge.SideClearanceMm)} each side");
        view.Leader(new(x, -(inner + outer) / 2), $"cheek {Mm(hinge.CheekMm)}");
        view.Leader(new(x, 0.3 * eye), $"{(hinge.Kind == HingeKind.PinnedKnuckles ? "pin" : "bar")} {Dia(hinge.BarMm)}");
        return view.Finish("JOINT, CUT AT THE HINGE AXIS", $"scale {scale.Text}; from above");
    }
}
