using System.Text.Encodings.Web;
using System.Text.Json;

namespace Linewright.Brief;

/// <summary>The brief's fields as a JSON Schema, so that any editor completes and checks a brief while it is written.</summary>
/// <remarks>Standard: JSON Schema, draft 2020-12. Units stand under "unit", a note that validators pass over.</remarks>
public static class BriefSchema
{
    /// <summary>Writes the schema in UTF-8 with \n line ends; the same bytes every time.</summary>
    public static void Write(Stream stream)
    {
        var options = new JsonWriterOptions { Indented = true, NewLine = "\n", Encoder = JavaScriptEncoder.UnsafeRelaxedJsonEscaping };
        using (var json = new Utf8JsonWriter(stream, options))
        {
            json.WriteStartObject();
            json.WriteString("$schema", "https://json-schema.org/draft/2020-12/schema");
            json.WriteString("title", "Linewright brief");
            json.WriteString("description", "What an articulated, stone-set line piece is asked to be. Everything left out has a default.");
            Properties(json, "");
            json.WriteEndObject();
        }

        stream.WriteByte((byte)'\n');
    }

    private static void Properties(Utf8JsonWriter json, string group)
    {
        var fields = BriefFields.In(group).ToArray();
        json.WriteString("type", "object");
        json.WriteStartObject("properties");
        foreach (var field in fields)
        {
            Field(json, field);
        }

        if (group.Length == 0)
        {
            foreach (var (name, help) in BriefFields.Groups)
            {
                json.WriteStartObject(name);
                json.WriteString("description", help);
                Properties(json, name);
                json.WriteEndObject();
            }
        }

        json.WriteEndObject();
        Required(json, group, fields);
        json.WriteBoolean("additionalProperties", false);
    }

    private static void Required(Utf8JsonWriter json, string group, IEnumerable<BriefField> fields)
    {
        var names = fields.Where(field => field.IsRequired).Select(field => field.Name).ToList();
        if (group.Length == 0)
        {
            // A group is required where one of its fields is; of the length, one form is.
            names.AddRange(BriefFields.Groups.Select(other => other.Name)
                .Where(name => name == "length" || BriefFields.In(name).Any(field => field.IsRequired)));
        }

        if (names.Count > 0)
        {
            json.WriteStartArray("required");
            names.ForEach(json.WriteStringValue);
            json.WriteEndArray();
        }

        if (group == "length")
        {
            json.WriteStartArray("oneOf");
            foreach (var form in (string[])["laid_flat_mm", "laid_flat_in", "wrist_mm"])
            {
                json.WriteStartObject();
                json.WriteStartArray("required");
                json.WriteStringValue(form);
                json.WriteEndArray();
                json.WriteEndObject();
            }

            json.WriteEndArray();
            json.WriteStartObject("dependentRequired");
            json.WriteStartArray("ease_mm");
            json.WriteStringValue("wrist_mm");
            json.WriteEndArray();
            json.WriteEndObject();
        }
    }

    private static void Field(Utf8JsonWriter json, BriefField field)
    {
        json.WriteStartObject(field.Name);
        json.WriteString("title", Title(field));
        json.WriteString("description", field.Help + (field.DefaultRule is { } rule ? $" Default: {rule}." : ""));
        switch (field.Kind)
        {
            case FieldKind.Flag:
                json.WriteString("type", "boolean");
                break;
            case FieldKind.Text:
                json.WriteString("type", "string");
                json.WriteNumber("minLength", 1);
                json.WriteNumber("maxLength", field.LongestText);
                break;
            case FieldKind.Choice:
                json.WriteStartArray("enum");
                foreach (var word in field.Choices)
                {
                    json.WriteStringValue(word);
                }

                json.WriteEndArray();
                break;
            default:
                json.WriteString("type", field.Step > 0 ? "integer" : "number");
                json.WriteNumber("minimum", field.Low);
                json.WriteNumber("maximum", field.High);
                if (field.Step > 0)
                {
                    json.WriteNumber("multipleOf", field.Step);
                }

                break;
        }

        if (field.Unit.Length > 0)
        {
            json.WriteString("unit", field.Unit);
        }

        Default(json, field);
        json.WriteEndObject();
    }

    private static void Default(Utf8JsonWriter json, BriefField field)
    {
        if (field.DefaultNumber is { } number)
        {
            json.WriteNumber("default", number);
        }
        else if (field.DefaultChoice is { } word)
        {
            json.WriteString("default", word);
        }
        else if (field.DefaultFlag is { } flag)
        {
            json.WriteBoolean("default", flag);
        }
    }

    // lower_half_percent reads as Lower half: the unit is said apart.
    private static string Title(BriefField field)
    {
        var words = field.Name.TrimStart('$').Split('_').ToList();
        if (words.Count > 1 && words[^1] is "mm" or "in" or "um" or "deg" or "percent")
        {
            words.RemoveAt(words.Count - 1);
        }

        var title = string.Join(' ', words);
        return char.ToUpperInvariant(title[0]) + title[1..];
    }
}
