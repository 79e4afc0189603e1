using System.Text.Encodings.Web;
using System.Text.Json;
using System.Text.Json.Serialization.Metadata;

namespace Linewright.Quote;

/// <summary>Writes quotes and grids as JSON in UTF-8: snake_case keys, two spaces, \n, and the same bytes for the same quote.</summary>
public static class QuoteJson
{
    private static readonly JsonSerializerOptions Options = new(QuoteShapes.Default.Options)
    {
        Encoder = JavaScriptEncoder.UnsafeRelaxedJsonEscaping, // as the report: names keep their accents
    };

    /// <summary>Writes a quote and a line end.</summary>
    public static void Write(PieceQuote quote, Stream stream) => Write<PieceQuote>(quote, stream);

    /// <summary>Writes a grid and a line end.</summary>
    public static void Write(QuoteGrid grid, Stream stream) => Write<QuoteGrid>(grid, stream);

    private static void Write<T>(T value, Stream stream)
    {
        JsonSerializer.Serialize(stream, value, (JsonTypeInfo<T>)Options.GetTypeInfo(typeof(T)));
        stream.WriteByte((byte)'\n');
    }
}
