using System.Globalization;
using System.Text;
using System.Text.Json;
using Linewright.Brief;
using Linewright.Materials;

namespace Linewright.Quote;

/// <summary>One pass over the JSON of a price list: values that are in order, and faults with their places.</summary>
internal sealed class PriceScan(ReadOnlyMemory<byte> utf8)
{
    private const int DeepestLevel = 32, MostFaults = 40;

    /// <summary>What is wrong so far.</summary>
    public List<BriefFault> Faults { get; } = [];

    /// <summary>Reads the whole text; null where it is not an object.</summary>
    public PriceNode? Run()
    {
        var reader = new Utf8JsonReader(Plain, new JsonReaderOptions { MaxDepth = DeepestLevel });
        try
        {
            reader.Read();
            if (reader.TokenType != JsonTokenType.StartObject)
            {
                Fault(Place(reader.TokenStartIndex), "", BriefScan.Words(ref reader), "an object with the fields of a price list", "begin with { \"name\": \"...\" }");
                return null;
            }

            var root = Group(ref reader, PriceShape.Root, "");
            if (Faults.Count < MostFaults)
            {
                reader.Read();
            }

            return root;
        }
        catch (JsonException slip)
        {
            var fault = JsonSlip.Describe(Plain, slip, reader.CurrentDepth >= DeepestLevel - 1);

            // The words were made for briefs.
            Faults.Add(fault with
            {
                Expected = fault.Expected.Replace("brief", "price list", StringComparison.Ordinal),
                Hint = fault.Hint.Replace("a brief is two", "a price list is four", StringComparison.Ordinal).Replace("brief", "price list", StringComparison.Ordinal),
            });
            return null;
        }
    }

    private ReadOnlySpan<byte> Plain => utf8.Span.StartsWith("\uFEFF"u8) ? utf8.Span[3..] : utf8.Span;

    private PriceNode Group(ref Utf8JsonReader reader, PriceField shape, string path)
    {
        var (line, column) = Place(reader.TokenStartIndex);
        var group = new PriceNode(line, column);
        var meant = new HashSet<string>(StringComparer.Ordinal);
        while (Faults.Count < MostFaults && reader.Read() && reader.TokenType == JsonTokenType.PropertyName)
        {
            var at = Place(reader.TokenStartIndex);
            var name = BriefScan.Text(ref reader);
            var inner = path.Length > 0 ? $"{path}.{BriefScan.Plain(name)}" : BriefScan.Plain(name);
            reader.Read();
            if (shape.Fields.FirstOrDefault(field => field.Name == name) is not { } known)
            {
                Fault(at, inner, $"an unknown field \"{BriefScan.Plain(name)}\"", path.Length > 0 ? $"a field of {path}" : "a field of a price list", Near(name, shape, meant));
                reader.Skip();
            }
            else if (!meant.Add(name))
            {
                Fault(at, inner, $"\"{name}\" a second time", "every field once", "remove one of the two");
                reader.Skip();
            }
            else if (Value(ref reader, known, inner) is { } value)
            {
                group.Fields[name] = value;
            }
        }

        foreach (var field in Faults.Count < MostFaults ? shape.Fields.Where(field => field.IsRequired && !meant.Contains(field.Name)) : [])
        {
            Fault((line, column), path.Length > 0 ? $"{path}.{field.Name}" : field.Name, "nothing", field.Expected, $"add \"{field.Name}\"");
        }

        return group;
    }

    private PriceNode? Value(ref Utf8JsonReader reader, PriceField field, string path)
    {
        var place = Place(reader.TokenStartIndex);
        switch (field.Kind, reader.TokenType)
        {
            case (PriceKind.Group, JsonTokenType.StartObject):
                return Group(ref reader, field, path);
            case (PriceKind.List, JsonTokenType.StartArray):
                return Rows(ref reader, field, path);
            case (PriceKind.Number, JsonTokenType.Number) when reader.TryGetDecimal(out var number) && number >= field.Low && number <= field.High:
                return new PriceNode(place.Line, place.Column) { Number = number };
            case (PriceKind.Choice, JsonTokenType.String) when field.Choices.Contains(BriefScan.Text(ref reader), StringComparer.Ordinal):
            case (PriceKind.Text, JsonTokenType.String) when IsReadable(BriefScan.Text(ref reader)):
            case (PriceKind.Day, JsonTokenType.String) when DateOnly.TryParseExact(BriefScan.Text(ref reader), "yyyy-MM-dd", CultureInfo.InvariantCulture, DateTimeStyles.None, out _):
                return new PriceNode(place.Line, place.Column) { Text = BriefScan.Text(ref reader) };
            default:
                Fault(place, path, BriefScan.Words(ref reader), field.Expected, Hint(ref reader, field));
                reader.Skip();
                return null;
        }
    }

    private PriceNode Rows(ref Utf8JsonReader reader, PriceField field, string path)
    {
        var (line, column) = Place(reader.TokenStartIndex);
        var list = new PriceNode(line, column);
        while (Faults.Count < MostFaults && reader.Read() && reader.TokenType != JsonTokenType.EndArray)
        {
            var inner = string.Create(CultureInfo.InvariantCulture, $"{path}[{list.Rows.Count}]");
            if (reader.TokenType != JsonTokenType.StartObject)
            {
                Fault(Place(reader.TokenStartIndex), inner, BriefScan.Words(ref reader), "a row in braces", $"write {{ \"{field.Fields[0].Name}\": ... }}");
                reader.Skip();
            }
            else
            {
                list.Rows.Add(Group(ref reader, field, inner));
            }
        }

        return list;
    }

    private static string Near(string name, PriceField shape, HashSet<string> meant)
    {
        var names = shape.Fields.Select(field => field.Name).ToList();
        if (NearestName.Of(name, names) is not { } near)
        {
            return "known are " + string.Join(", ", names);
        }

        meant.Add(near);
        return $"did you mean \"{near}\"?";
    }

    private static string Hint(ref Utf8JsonReader reader, PriceField field) => field.Kind switch
    {
        PriceKind.Number when reader.TokenType == JsonTokenType.Number => "write a plain decimal number within the range",
        PriceKind.Number => "write a plain number without quotes, unit or currency",
        PriceKind.Choice when reader.TokenType == JsonTokenType.String => NearestName.Of(BriefScan.Text(ref reader), field.Choices) is { } near ? $"did you mean \"{near}\"?" : $"write one of them in quotes, such as \"{field.Example}\"",
        PriceKind.Choice => $"write a word in quotes, such as \"{field.Example}\"",
        PriceKind.Text => "write a short text in quotes, without control characters",
        PriceKind.Day => "write year, month and day in quotes",
        PriceKind.List => "write [ { ... }, { ... } ]; [ ] says that nothing is charged",
        _ => "write { ... }",
    };

    private static bool IsReadable(string text)
        => !string.IsNullOrWhiteSpace(text) && text.Length <= 200 && !text.EnumerateRunes().Any(rune => Rune.IsControl(rune) || rune.Value == 0xFFFD);

    private (int Line, int Column) Place(long offset) => TextPlace.Of(utf8.Span, offset + utf8.Length - Plain.Length);

    private void Fault((int Line, int Column) place, string path, string read, string expected, string hint)
        => Faults.Add(new BriefFault(path, place.Line, place.Column, read, expected, hint));
}
