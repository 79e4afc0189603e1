using System.Text.Encodings.Web;
using System.Text.Json;
using System.Text.Json.Serialization.Metadata;

namespace Linewright.Making;

/// <summary>Writes the report as JSON in UTF-8: snake_case keys, two spaces, \n, and the same bytes for the same report.</summary>
public static class ReportJson
{
    private static readonly JsonSerializerOptions Options = new(ReportShapes.Default.Options)
    {
        Encoder = JavaScriptEncoder.UnsafeRelaxedJsonEscaping, // names keep their accents; the file is never part of a web page
    };

    /// <summary>Writes the whole report and a line end.</summary>
    public static void Write(Report report, Stream stream)
    {
        JsonSerializer.Serialize(stream, report, (JsonTypeInfo<Report>)Options.GetTypeInfo(typeof(Report)));
        stream.WriteByte((byte)'\n');
    }
}
