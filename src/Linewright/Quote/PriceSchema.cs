using System.Text.Encodings.Web;
using System.Text.Json;

namespace Linewright.Quote;

/// <summary>The price list's fields as a JSON Schema, so that any editor completes and checks a list while it is written.</summary>
/// <remarks>Standard: JSON Schema, draft 2020-12. That bands may not overlap, and that a rate must exist, only the reader can say.</remarks>
public static class PriceSchema
{
    /// <summary>Writes the schema in UTF-8 with \n line ends; the same bytes every time.</summary>
    public static void Write(Stream stream)
    {
        ArgumentNullException.ThrowIfNull(stream);
        var options = new JsonWriterOptions { Indented = true, NewLine = "\n", Encoder = JavaScriptEncoder.UnsafeRelaxedJsonEscaping };
        using (var json = new Utf8JsonWriter(stream, options))
        {
            json.WriteStartObject();
            json.WriteString("$schema", "https://json-schema.org/draft/2020-12/schema");
            json.WriteString("title", "Linewright price list");
            Body(json, PriceShape.Root);
            json.WriteEndObject();
        }

        stream.WriteByte((byte)'\n');
    }

    private static void Body(Utf8JsonWriter json, PriceField field)
    {
        json.WriteString("description", field.Help);
        switch (field.Kind)
        {
            case PriceKind.Group:
                Group(json, field);
                break;
            case PriceKind.List:
                json.WriteString("type", "array");
                json.WriteStartObject("items");
                Group(json, field);
                json.WriteEndObject();
                break;
            case PriceKind.Choice:
                json.WriteStartArray("enum");
                foreach (var word in field.Choices)
                {
                    json.WriteStringValue(word);
                }

                json.WriteEndArray();
                break;
            case PriceKind.Number:
                json.WriteString("type", "number");
                json.WriteNumber("minimum", field.Low);
                json.WriteNumber("maximum", field.High);
                break;
            case PriceKind.Day:
                json.WriteString("type", "string");
                json.WriteString("format", "date");
                break;
            default:
                json.WriteString("type", "string");
                json.WriteNumber("minLength", 1);
                json.WriteNumber("maxLength", 200);
                break;
        }
    }

    private static void Group(Utf8JsonWriter json, PriceField group)
    {
        json.WriteString("type", "object");
        json.WriteStartObject("properties");
        foreach (var field in group.Fields)
        {
            json.WriteStartObject(field.Name);
            Body(json, field);
            json.WriteEndObject();
        }

        json.WriteEndObject();
        if (group.Fields.Any(field => field.IsRequired))
        {
            json.WriteStartArray("required");
            foreach (var field in group.Fields.Where(field => field.IsRequired))
            {
                json.WriteStringValue(field.Name);
            }

            json.WriteEndArray();
        }

        json.WriteBoolean("additionalProperties", false);
    }
}
