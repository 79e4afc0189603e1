using System.Text;

namespace Linewright.Files;

/// <summary>Writes a table as CSV: comma, CRLF, quotes only where needed, UTF-8 without a byte-order mark.</summary>
/// <remarks>Source: RFC 4180 (2005), Common Format and MIME Type for CSV Files, section 2.</remarks>
public static class CsvWriter
{
    private const string LineEnd = "\r\n";

    /// <summary>Writes a header and rows of the same width, and leaves the stream open.</summary>
    /// <exception cref="ArgumentException">A row has more or fewer fields than the header.</exception>
    public static void Write(Stream stream, IReadOnlyList<string> header, IEnumerable<IReadOnlyList<CsvCell>> rows)
    {
        ArgumentNullException.ThrowIfNull(stream);
        ArgumentNullException.ThrowIfNull(header);
        ArgumentNullException.ThrowIfNull(rows);
        using var writer = new StreamWriter(stream, new UTF8Encoding(encoderShouldEmitUTF8Identifier: false), leaveOpen: true);
        writer.Write(string.Join(',', header.Select(Quoted)) + LineEnd);
        foreach (var row in rows)
        {
            if (row.Count != header.Count)
            {
                throw new ArgumentException(FormattableString.Invariant($"a row has {row.Count} fields under {header.Count} headings"), nameof(rows));
            }

            writer.Write(string.Join(',', row.Select(cell => Quoted(cell.Text))) + LineEnd);
        }
    }

    private static string Quoted(string text)
        => text.AsSpan().ContainsAny(",\"\r\n") ? "\"" + text.Replace("\"", "\"\"", StringComparison.Ordinal) + "\"" : text;
}
