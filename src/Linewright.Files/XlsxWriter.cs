using System.IO.Compression;
using SpreadCheetah;
using SpreadCheetah.Styling;
using SpreadCheetah.Worksheets;

namespace Linewright.Files;

/// <summary>Writes sheets as an XLSX workbook: headings frozen, numbers as numbers, formulas with their values.</summary>
/// <remarks>
/// Standard: ECMA-376, Office Open XML. A program that recalculates finds what stands there; one that does not, shows it. The package is
/// repacked without compression and without dates, so that the same sheets give the same bytes: docs/decisions/0021.
/// </remarks>
public static class XlsxWriter
{
    /// <summary>Writes the workbook and leaves the stream open.</summary>
    /// <exception cref="ArgumentException">There is no sheet, or a row is wider than its columns.</exception>
    public static void Write(Stream stream, IReadOnlyList<Sheet> sheets)
    {
        ArgumentNullException.ThrowIfNull(stream);
        ArgumentNullException.ThrowIfNull(sheets);
        if (sheets.Count == 0)
        {
            throw new ArgumentException("a workbook needs a sheet", nameof(sheets));
        }

        using var packed = new MemoryStream();
        PackAsync(packed, sheets).AsTask().GetAwaiter().GetResult();
        packed.Position = 0;
        using var source = new ZipArchive(packed, ZipArchiveMode.Read);
        using var target = new StoredZip(stream);
        foreach (var entry in source.Entries)
        {
            using var content = new MemoryStream();
            using (var part = entry.Open())
            {
                part.CopyTo(content);
            }

            target.Add(entry.FullName, content.ToArray());
        }
    }

    // Nothing here waits: the stream is memory. Without properties of the document there is no date in it.
    private static async ValueTask PackAsync(Stream stream, IReadOnlyList<Sheet> sheets)
    {
        var book = await Spreadsheet.CreateNewAsync(stream, new SpreadCheetahOptions { CompressionLevel = SpreadCheetahCompressionLevel.Fastest, DocumentProperties = null }).ConfigureAwait(false);
        await using (book.ConfigureAwait(false))
        {
            var heading = book.AddStyle(new Style
            {
                Font = { Bold = true },
                Alignment = { WrapText = true, Vertical = VerticalAlignment.Top },
                Border = { Bottom = { BorderStyle = BorderStyle.Thin } },
            });
            var styles = new Dictionary<(CellFormat, bool), StyleId>();
            foreach (var format in Enum.GetValues<CellFormat>())
            {
                styles[(format, false)] = book.AddStyle(StyleOf(format, false));
                styles[(format, true)] = book.AddStyle(StyleOf(format, true));
            }

            foreach (var sheet in sheets)
            {
                var options = new WorksheetOptions { FrozenRows = 1 };
                for (var i = 0; i < sheet.Columns.Count; i++)
                {
                    options.Column(i + 1).Width = sheet.Columns[i].Width;
                }

                await book.StartWorksheetAsync(sheet.Name, options).ConfigureAwait(false);
                await book.AddRowAsync([.. sheet.Columns.Select(column => new Cell(column.Heading, heading))]).ConfigureAwait(false);
                foreach (var row in sheet.Rows)
                {
                    if (row.Count > sheet.Columns.Count)
                    {
                        throw new ArgumentException(FormattableString.Invariant($"a row has {row.Count} cells under {sheet.Columns.Count} headings"), nameof(sheets));
                    }

                    await book.AddRowAsync([.. row.Select(cell => CellOf(cell, styles[(cell.Format, cell.IsStrong)]))]).ConfigureAwait(false);
                }
            }

            await book.FinishAsync().ConfigureAwait(false);
        }
    }

    private static Cell CellOf(SheetCell cell, StyleId style) => cell switch
    {
        { Formula: { } formula } => new Cell(new Formula(formula), cell.Number, style),
        { Number: { } number } => new Cell(number, style),
        _ => new Cell(cell.Text, style),
    };

    private static Style StyleOf(CellFormat format, bool isStrong)
    {
        var style = new Style { Font = { Bold = isStrong }, Alignment = { Vertical = VerticalAlignment.Top, WrapText = format == CellFormat.General } };
        style.Format = format switch
        {
            CellFormat.Whole => NumberFormat.Standard(StandardNumberFormat.ThousandsSeparator),
            CellFormat.TwoDecimals => NumberFormat.Standard(StandardNumberFormat.ThousandsSeparatorTwoDecimalPlaces),
            CellFormat.FourDecimals => NumberFormat.Custom("0.0000"),
            _ => null,
        };
        return style;
    }
}
