using System.Security.Cryptography;
using System.Text;
using Linewright.Paper;

namespace Linewright.Files;

/// <summary>Writes pages as PDF 1.7: lines stay lines, text stays text that can be searched and copied, its type embedded.</summary>
/// <remarks>
/// Source: ISO 32000-1:2008. The same pages give the same bytes: no dates, an identifier from the contents, streams not
/// packed. Only black and greys. A date that is wanted stands on the page.
/// </remarks>
public static class PdfWriter
{
    // A point is 1/72 inch.
    private const double PointsPerMm = 72 / 25.4;

    /// <summary>Writes the document and leaves the stream open.</summary>
    /// <exception cref="ArgumentException">The document has no pages.</exception>
    public static void Write(Stream stream, PaperDocument document)
    {
        ArgumentNullException.ThrowIfNull(stream);
        ArgumentNullException.ThrowIfNull(document);
        if (document.Pages.IsEmpty)
        {
            throw new ArgumentException("a document needs a page", nameof(document));
        }

        var file = new PdfObjects();
        int catalogue = file.Reserve(), pages = file.Reserve(), info = file.Reserve();
        var faces = new Dictionary<TextWeight, PdfFace>();
        foreach (var weight in (TextWeight[])[TextWeight.Regular, TextWeight.Strong])
        {
            var characters = document.CharactersIn(weight);
            if (!characters.IsEmpty)
            {
                faces.Add(weight, PdfFace.Write(file, Typeface.Of(weight), weight == TextWeight.Strong ? "F2" : "F1", characters));
            }
        }

        var fonts = string.Concat(faces.Values.Select(face => FormattableString.Invariant($" /{face.Key} {face.Reference} 0 R")));
        var kids = new List<int>();
        foreach (var page in document.Pages)
        {
            var content = file.AddStream("", Encoding.ASCII.GetBytes(new PdfContent(page, faces).Text()));
            kids.Add(file.Add(FormattableString.Invariant(
                $"<< /Type /Page /Parent {pages} 0 R /MediaBox [0 0 {page.Size.WidthMm * PointsPerMm:0.###} {page.Size.HeightMm * PointsPerMm:0.###}] /Contents {content} 0 R /Resources << /Font <<{fonts} >> >> >>")));
        }

        file.Set(pages, FormattableString.Invariant($"<< /Type /Pages /Count {kids.Count} /Kids [{string.Join(' ', kids.Select(kid => FormattableString.Invariant($"{kid} 0 R")))}] >>"));
        file.Set(catalogue, FormattableString.Invariant($"<< /Type /Catalog /Pages {pages} 0 R /Lang (en) /ViewerPreferences << /DisplayDocTitle true /PrintScaling /None >> >>"));
        file.Set(info, $"<< /Title {PdfObjects.TextString(document.Title)} /Producer (Linewright) >>");
        var bytes = file.Bytes(catalogue, info, SHA256.HashData);
        stream.Write(bytes);
    }
}
