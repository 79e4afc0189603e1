using System.Text.Json;
using System.Text.Json.Serialization;

namespace Linewright.Making;

/// <summary>Writes numbers to a millionth, so that the last bits of a sine do not change the file from machine to machine.</summary>
/// <remarks>A millionth of a millimetre is a thousand times finer than any step of the making.</remarks>
internal sealed class StableNumber : JsonConverter<double>
{
    private const int Decimals = 6;

    public override double Read(ref Utf8JsonReader reader, Type typeToConvert, JsonSerializerOptions options) => reader.GetDouble();

    public override void Write(Utf8JsonWriter writer, double value, JsonSerializerOptions options)
    {
        if (!double.IsFinite(value))
        {
            throw new ArgumentOutOfRangeException(nameof(value), value, "A report holds finite numbers only");
        }

        // Adding zero turns -0 into 0.
        writer.WriteNumberValue(Math.Round(value, Decimals, MidpointRounding.ToEven) + 0.0);
    }
}
