using System.Text.Json.Serialization;
using Linewright.Making;

namespace Linewright.Quote;

/// <summary>How the records of quotes become JSON; made at build time.</summary>
[JsonSourceGenerationOptions(
    PropertyNamingPolicy = JsonKnownNamingPolicy.SnakeCaseLower,
    DefaultIgnoreCondition = JsonIgnoreCondition.Never,
    WriteIndented = true,
    IndentSize = 2,
    NewLine = "\n",
    Converters = [typeof(StableNumber), typeof(StableDecimal)])]
[JsonSerializable(typeof(PieceQuote))]
[JsonSerializable(typeof(QuoteGrid))]
internal sealed partial class QuoteShapes : JsonSerializerContext;
