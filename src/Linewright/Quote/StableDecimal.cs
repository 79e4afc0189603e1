using System.Text.Json;
using System.Text.Json.Serialization;

namespace Linewright.Quote;

/// <summary>Writes decimals without the zeros that arithmetic leaves behind them, and to ten places: a thirtieth has no end.</summary>
internal sealed class StableDecimal : JsonConverter<decimal>
{
    private const int Decimals = 10;

    // Division by the largest one there is takes trailing zeros away and nothing else.
    private const decimal One = 1.000000000000000000000000000m;

    /// <inheritdoc/>
    public override decimal Read(ref Utf8JsonReader reader, Type typeToConvert, JsonSerializerOptions options) => reader.GetDecimal();

    /// <inheritdoc/>
    public override void Write(Utf8JsonWriter writer, decimal value, JsonSerializerOptions options)
        => writer.WriteNumberValue(decimal.Round(value, Decimals, MidpointRounding.AwayFromZero) / One);
}
