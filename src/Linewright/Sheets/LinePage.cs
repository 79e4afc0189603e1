using System.Collections.Immutable;
using Linewright.Layout;
using Linewright.Paper;
using Linewright.Parts;
using Linewright.Solids.Outlines;
using Linewright.Solids.Space;
using static Linewright.Sheets.Figures;

namespace Linewright.Sheets;

/// <summary>The whole line: pulled taut on a table and closed round a wrist, with its figures.</summary>
/// <remarks>
/// Links that stand between two links at the same angle look alike: one is drawn between its neighbours and repeated. The
/// first, the last and the clasp are drawn for themselves.
/// </remarks>
internal sealed class LinePage
{
    private readonly Piece piece;
    private readonly SheetBodies bodies;
    private readonly LinkForm form;
    private readonly HingeForm hinge;
    private readonly LineCandidate layout;
    private readonly WristFit? ring;
    private readonly double linkWidthMm;
    private readonly JointBend bend;
    private readonly List<OutlineLine> flat;
    private readonly List<OutlineLine> closed;

    public LinePage(Piece piece, SheetBodies bodies, double linkWidthMm, JointBend bend)
    {
        (this.linkWidthMm, this.bend) = (linkWidthMm, bend);
        (this.piece, this.bodies, form, hinge, layout) = (piece, bodies, piece.Link, piece.Hinge, piece.Layout);

        // Round, as the inside circumference is meant.
        ring = WristFit.Solve(layout.Chain, 1, 2).Fit;
        List<OutlineLine> flatLines = [], closedLines = [];
        Parallel.Invoke(
            () => flatLines = Run(FlatFit.Solve(layout.Chain).Placements, ViewFrame.From(Vec3.UnitZ, Vec3.UnitY), isRing: false),
            () => closedLines = ring is null ? [] : Run(ring.Placements, ViewFrame.From(-Vec3.UnitY, Vec3.UnitZ), isRing: true));
        (flat, closed) = (flatLines, closedLines);
    }

    /// <summary>The page's content and the scale of its main view.</summary>
    /// <param name="field">The room.</param>
    /// <param name="partsOf">The table of parts in a width.</param>
    public (string Scale, ImmutableArray<Mark> Marks) Draw(PaperBox field, Func<double, Table> partsOf)
    {
        // The flat line above, over the whole width; the ring and the figures below share what is left.
        var flatScale = SheetScale.Largest(scale => Flat(scale) is var block && block.Box.Width <= field.Width && block.Box.Height <= 0.4 * field.Height, most: 2);
        var flatBlock = Flat(flatScale);
        var rest = field with { Top = field.Top + flatBlock.Box.Height + 5 };
        var figures = FiguresOf();
        var parts = partsOf(figures.WidthMm);
        var ringScale = SheetScale.Largest(
            scale => Ring(scale) is var block && block.Box.Height <= rest.Height && block.Box.Width <= rest.Width - figures.WidthMm - 12, most: 2);
        var ringBlock = Ring(ringScale);
        var air = (rest.Width - ringBlock.Box.Width - figures.WidthMm) / 3;
        var marks = ImmutableArray.CreateBuilder<Mark>();
        marks.AddRange(flatBlock.CentredAt(new PaperPoint(field.Centre.X, field.Top + flatBlock.Box.Height / 2)));
        marks.AddRange(ringBlock.CentredAt(new PaperPoint(rest.Left + air + ringBlock.Box.Width / 2, rest.Centre.Y)));
        double left = rest.Right - air - figures.WidthMm, between = 6, top = rest.Centre.Y - (figures.HeightMm + between + parts.HeightMm) / 2;
        marks.AddRange(figures.Set(left, top).Marks);
        marks.AddRange(parts.Set(left, top + figures.HeightMm + between).Marks);
        return (flatScale.Text, marks.ToImmutable());
    }

    private Table FiguresOf()
    {
        var fit = layout.Fit;
        ImmutableArray<ImmutableArray<string>> rows =
        [
            ["links", $"{Count(layout.Count)} pcs"],
            ["pitch, hinge axis to hinge axis", Fine(layout.PitchMm)],
            ["clasp, hinge axis to hinge axis", Mm(layout.ClaspMm)],
            ["laid flat, taut, clasp closed", Mm(layout.LaidFlatMm)],
            ["inside circumference, round", Mm(fit.InsideCircumferenceMm)],
            ["from link to link, round", $"{Number(fit.HingeAngleDeg, 1)}\u00b0"],
            ["from link to clasp, round", $"{Number(fit.ClaspHingeAngleDeg, 1)}\u00b0"],
            ["a joint bends inwards by", bend.Inward],
            ["a joint bends back by", bend.Outward],
            ["hinge axis over the skin", Mm(hinge.HeightMm)],
            ["play of a joint along the line", Fine(2 * hinge.PlayMm)],
            ["shorter with all play taken up by", Mm(layout.PlayTotalMm)],
            ["between girdles, taut", Mm(layout.GapMm)],
            ["width of a link, as meshed", Mm(linkWidthMm)],
        ];
        return new Table([new("figures of the line", 62), new("mm", 22, Align.Right)], rows, SheetPens.Small);
    }

    /// <summary>All lines of the line in one position, each kind of neighbourhood drawn once.</summary>
    private List<OutlineLine> Run(ImmutableArray<LinkPlacement> places, ViewFrame frame, bool isRing)
    {
        var count = places.Length;
        var lines = new List<OutlineLine>();
        var settings = bodies.Settings with { SameMm = 0.05, StraightMm = 0.01, ShortestMm = 0.15 };
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
            foreach (var offset in (int[])[0, -1, 1])
            {
                var at = isRing ? (i + offset + count) % count : i + offset;
                if (at >= 0 && at < count)
                {
                    var there = places[at].IsClasp
                        ? bodies.Clasp(Pose.Move(-piece.Clasp.LengthMm / 2, 0, 0).Then(places[at].Pose))
                        : bodies.Link(places[at].Pose, isPlain: true);
                    scene.AddRange(there.Select(body => body with { IsMask = offset != 0 }));
                }
            }

            ImmutableArray<OutlineLine> own = OutlineDrawer.Draw(scene, frame, settings).Lines;
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

    // At this size everything is narrow.
    private static Pen SmallPen(OutlineLine line) => SheetBodies.IsStone(line.Tag) ? SheetPens.Facet : SheetPens.Narrow;

    private Block Flat(SheetScale scale)
    {
        var view = new DrawnView(scale);
        foreach (var line in flat)
        {
            view.Add(line.Points, SmallPen(line));
        }

        double half = form.PitchMm / 2, start = -half, end = start + layout.Count * form.PitchMm, clasp = end + layout.ClaspMm, side = form.WidthMm / 2;
        view.Axis(new(start, 0), new(clasp, 0));
        view.Dimension(DrawnView.Side.Below, new(start, -side), new(end, -side), $"{Count(layout.Count)} links \u00d7 {Factor(form.PitchMm, layout.Count)} = {Mm(layout.Count * form.PitchMm)}");
        view.Dimension(DrawnView.Side.Below, new(end, -side), new(clasp, -side), $"{Mm(layout.ClaspMm)} clasp");
        view.Dimension(DrawnView.Side.Below, new(start, -side), new(clasp, -side), $"{Mm(layout.LaidFlatMm)} laid flat, taut, through the hinge axes");
        return view.Finish("LINE, LAID FLAT", $"from above, scale {scale.Text}; link 1 at the left, its bar joins the tongue's eye when closed");
    }

    private Block Ring(SheetScale scale)
    {
        var view = new DrawnView(scale);
        foreach (var line in closed)
        {
            view.Add(line.Points, SmallPen(line));
        }

        if (ring is null)
        {
            return view.Finish("LINE, CLOSED", "the line does not close round a wrist");
        }

        // The wrist that the report names; a ring of hinges on one circle comes out wider by a hair.
        var radius = layout.Fit.RadiusMm;
        view.Add(Enumerable.Range(0, 181).Select(i => new FlatPoint(Math.Cos(i * Math.PI / 90), Math.Sin(i * Math.PI / 90)) * radius), SheetPens.Axis);
        view.Centre(new(0, 0), 2 / scale.Factor);
        view.Dimension(DrawnView.Side.Above, new(-radius, 0), new(radius, 0), $"{Dia(2 * radius)} inside");
        return view.Finish(
            "LINE, CLOSED ROUND",
            $"scale {scale.Text}; inside circumference {Mm(layout.Fit.InsideCircumferenceMm)}");
    }
}
