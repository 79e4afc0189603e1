using System.Collections.Immutable;
using System.Globalization;
using Linewright.Assembly;
using Linewright.Files;
using Linewright.Making;
using Linewright.Paper;
using Linewright.Sheets;
using Linewright.Solids.Outlines;

namespace Linewright.Delivery;

/// <summary>Writes the technical sheet: sheet.pdf, sheet-1.svg and on, outlines.dxf.</summary>
public static class SheetFiles
{
    // Lettering of the outlines' file, as a share of the height of all views: small beside them, and to be read where all are seen.
    private const double LetteringShare = 0.035;

    /// <summary>Draws the sheet and writes its files.</summary>
    /// <param name="model">The piece as worn.</param>
    /// <param name="report">Its report, with findings and cautions.</param>
    /// <param name="paper">A4 or letter.</param>
    /// <param name="date">For the title block; null leaves it empty.</param>
    /// <param name="create">Opens a new file for writing by its path in the folder.</param>
    /// <param name="stop">Asks to stop.</param>
    /// <exception cref="OperationCanceledException">The work was asked to stop.</exception>
    public static void Write(PieceModel model, Report report, PaperSize paper, DateOnly? date, Func<string, Stream> create, CancellationToken stop)
    {
        ArgumentNullException.ThrowIfNull(model);
        var shading = new CreasedNormals[model.AsSet.Length];
        Parallel.For(0, shading.Length, i => shading[i] = CreasedNormals.Of(model.AsSet[i].Mesh, model.Piece.Parts[i].AsSet));
        Write(model, shading, report, paper, date, create, stop);
    }

    /// <summary>The same, with surfaces that were felt already.</summary>
    internal static void Write(
        PieceModel model, IEnumerable<CreasedNormals> shading, Report report, PaperSize paper, DateOnly? date, Func<string, Stream> create, CancellationToken stop)
    {
        ArgumentNullException.ThrowIfNull(report);
        ArgumentNullException.ThrowIfNull(create);
        ImmutableArray<OutlineBody> bodies = [.. shading.Select(surface => OutlineBody.Of(surface.Positions, surface.Normals, surface.Triangles))];
        stop.ThrowIfCancellationRequested();
        var sheet = SheetDrawer.Draw(new SheetTask(model, report, bodies, paper, date));
        stop.ThrowIfCancellationRequested();
        using (var file = create("sheet.pdf"))
        {
            PdfWriter.Write(file, sheet.Document);
        }

        for (var i = 0; i < sheet.Document.Pages.Length; i++)
        {
            using var file = create(string.Create(CultureInfo.InvariantCulture, $"sheet-{i + 1}.svg"));
            SvgWriter.Write(file, sheet.Document.Pages[i], string.Create(CultureInfo.InvariantCulture, $"{sheet.Document.Title}, page {i + 1}"));
        }

        using (var file = create("outlines.dxf"))
        {
            DxfWriter.Write(file, model.Piece.Design.Brief.Name, Layers(sheet));
        }
    }

    // A layer a view: its metal, its stone, and what lies behind; and one that says how the views lie, and which is which.
    private static List<DxfLayer> Layers(TechnicalSheet sheet) =>
    [
        Notes(sheet),
        .. sheet.Outlines.SelectMany(plan => (DxfLayer[])
        [
            Layer($"{plan.Name}_METAL", false, plan.Lines.Where(line => line.IsVisible && line.Tag != plan.StoneTag)),
            Layer($"{plan.Name}_STONE", false, plan.Lines.Where(line => line.IsVisible && line.Tag == plan.StoneTag)),
            Layer($"{plan.Name}_HIDDEN", true, plan.Lines.Where(line => !line.IsVisible && line.Tag != plan.StoneTag)),
        ]).Where(layer => layer.Lines.Count > 0),
    ];

    // Under each view its title, under the lowest the projection: release 12 has no sign for either.
    private static DxfLayer Notes(TechnicalSheet sheet)
    {
        var points = sheet.Outlines.SelectMany(plan => plan.Lines).SelectMany(line => line.Points).ToList();
        double left = points.Min(p => p.X), low = points.Min(p => p.Y), height = LetteringShare * (points.Max(p => p.Y) - low);
        var titles = sheet.Outlines.Select(plan =>
        {
            var own = plan.Lines.SelectMany(line => line.Points).ToList();
            return new DxfText(new FlatPoint(own.Min(p => p.X), own.Min(p => p.Y) - 2 * height), height, plan.Title);
        });
        var head = $"{sheet.ProjectionName.ToUpperInvariant()} PROJECTION, MM, SCALE 1:1, AS SET";
        return new DxfLayer("NOTES", false, []) { Texts = [.. titles, new DxfText(new FlatPoint(left, low - 4.5 * height), height, head)] };
    }

    private static DxfLayer Layer(string name, bool isDashed, IEnumerable<OutlineLine> lines)
        => new(name, isDashed, [.. lines.Select(line => (IReadOnlyList<FlatPoint>)line.Points)]);
}
