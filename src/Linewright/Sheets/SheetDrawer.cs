using System.Collections.Immutable;
using Linewright.Assembly;
using Linewright.Paper;
using Linewright.Parts;
using Linewright.Solids.Space;
using static Linewright.Sheets.Figures;

namespace Linewright.Sheets;

/// <summary>Front door of the room: draws the technical sheet that a bench makes the piece from.</summary>
/// <remarks>
/// Page 1 the link, then its sections and the joint, the whole line with its parts, the clasp, then stones, metal, tolerances, finish, work and cautions
/// in words. All dimensions are the finished piece's, in mm, those in brackets measured on the mesh and for information only.
/// The same piece and date give the same sheet.
/// </remarks>
public static class SheetDrawer
{
    /// <summary>Draws the sheet.</summary>
    /// <exception cref="ArgumentException">There are more or fewer bodies than parts.</exception>
    public static TechnicalSheet Draw(SheetTask task)
    {
        ArgumentNullException.ThrowIfNull(task);
        var (model, piece) = (task.Model, task.Model.Piece);
        if (task.Bodies.Length != piece.Parts.Length)
        {
            throw new ArgumentException($"{Count(piece.Parts.Length)} parts, {Count(task.Bodies.Length)} bodies", nameof(task));
        }

        var brief = piece.Design.Brief;
        var projection = task.Paper.Name == PaperSize.Letter.Name ? Projection.ThirdAngle : Projection.FirstAngle;
        var frame = new SheetFrame(
            task.Paper.Landscape,
            projection,
            brief.Name,
            $"{brief.Alloy.Name}, {Number(brief.Alloy.FinenessPerMille, 0)} \u2030",
            $"{Count(piece.Layout.Count)} \u00d7 {brief.Species.Name.ToLowerInvariant()}, round, {Dia(piece.Stone.DiameterMm)}",
            task.Date);
        var bodies = new SheetBodies(piece, task.Bodies);
        var bend = JointBend.Of(piece, task.Report);
        var linkSize = model.MeshOf(PartRole.Link).Mesh.Bounds;
        LinkPage link = null!;
        LinePage line = null!;
        ClaspPage clasp = null!;
        Parallel.Invoke(
            () => link = new LinkPage(piece, bodies, linkSize, bend),
            () => line = new LinePage(piece, bodies, linkSize.Size.Y, bend),
            () => clasp = new ClaspPage(piece, bodies, ClaspSize(model)));
        var (linkScale, linkMarks) = link.Draw(frame.Field, projection);
        var (lineScale, lineMarks) = line.Draw(frame.Field, width => SheetWords.Parts(task, width));
        ImmutableArray<DrawnPage> drawn =
        [
            new("link, as set", linkScale.Text, linkMarks), .. link.DrawSections(frame.Field, linkScale), new("line, parts", lineScale, lineMarks), .. clasp.Draw(frame.Field, projection),
        ];
        var words = WordFlow.Set(SheetWords.Sections(task, WordFlow.ColumnMm(frame.Field)), frame.Field, frame.Corner);
        var notes = Notes(frame, SheetWords.GeneralTolerance(piece));
        var count = drawn.Length + words.Length;
        var pages = ImmutableArray.CreateBuilder<Page>();
        pages.AddRange(drawn.Select((page, i) => frame.Page(page.Title, page.Scale, i + 1, count, [.. page.Marks, .. notes])));
        pages.AddRange(words.Select((marks, i) => frame.Page("stones, finish, work, cautions", "none", drawn.Length + i + 1, count, marks)));
        return new TechnicalSheet(new PaperDocument($"{brief.Name}, technical sheet", pages.ToImmutable()), link.Plans(projection), ProjectionSign.NameOf(projection));
    }

    private static Bounds ClaspSize(PieceModel model)
    {
        var box = Bounds.Empty;
        foreach (var role in (PartRole[])[PartRole.Box, PartRole.Tongue, PartRole.Safety])
        {
            box = model.Piece.Find(role) is null ? box : box.Join(model.MeshOf(role).Mesh.Bounds);
        }

        return box;
    }

    // Left of the title block: what the dimensions are.
    private static ImmutableArray<Label> Notes(SheetFrame frame, string tolerance)
    {
        var corner = frame.Corner;
        return Paragraph.Set(
            $"Finished piece, as set and polished; dimensions in mm, in brackets: for information. Without a tolerance {tolerance}; others on the last sheets. The figures hold: do not measure the print.",
            SheetPens.Small,
            corner.Left,
            corner.Top,
            corner.Width - 3);
    }
}
