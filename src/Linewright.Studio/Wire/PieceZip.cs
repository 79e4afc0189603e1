using System.IO.Compression;
using Linewright.Casting;
using Linewright.Delivery;
using Linewright.Making;
using Linewright.Paper;
using Linewright.Quote;

namespace Linewright.Studio.Wire;

/// <summary>Everything that make writes, as one archive. Same brief, same bytes: entries carry no clock.</summary>
public static class PieceZip
{
    // The earliest date that a zip can hold. Source: PKWARE, .ZIP File Format Specification, 4.4.6, MS-DOS dates.
    private static readonly DateTimeOffset NoDate = new(1980, 1, 1, 0, 0, 0, TimeSpan.Zero);

    /// <summary>Writes the archive in memory.</summary>
    /// <param name="made">The piece.</param>
    /// <param name="casting">Its patterns with their sprues, meshed.</param>
    /// <param name="report">Its report.</param>
    /// <param name="quote">What it costs; null where no prices are known.</param>
    /// <param name="paper">The paper of the sheet and of the client's page.</param>
    /// <param name="stage">Told what is being written.</param>
    /// <param name="stop">Asks to stop.</param>
    public static byte[] Write(MadePiece made, CastingPatterns casting, Report report, PieceQuote? quote, PaperSize paper, IProgress<string> stage, CancellationToken stop)
    {
        using var bytes = new MemoryStream();
        using (var zip = new ZipArchive(bytes, ZipArchiveMode.Create, leaveOpen: true))
        {
            Stream Create(string name)
            {
                var entry = zip.CreateEntry(name, CompressionLevel.Fastest);
                entry.LastWriteTime = NoDate;
                return entry.Open();
            }

            PieceFiles.Write(made, casting, Create, stage, stop);
            SheetFiles.Write(made.Model, report, paper, null, Create, stop);
            if (quote is not null)
            {
                QuoteFiles.Write(quote, made.Model.Piece.Design.Brief, paper, Create);
            }

            using var file = Create("report.json");
            ReportJson.Write(report, file);
        }

        return bytes.ToArray();
    }
}
