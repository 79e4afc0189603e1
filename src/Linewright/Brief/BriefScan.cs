using System.Text;
using System.Text.Json;

namespace Linewright.Brief;

/// <summary>One pass over the JSON of a brief: values that are in order, and faults with their places.</summary>
internal sealed class BriefScan(ReadOnlyMemory<byte> utf8)
{
    // A brief is two levels deep; anything far deeper is not one.
    private const int DeepestLevel = 32;

    // A person mends a screenful at a time; a file with thousands of faults is not a brief.
    private const int MostFaults = 40;

    private readonly Dictionary<string, (int Line, int Column)> groups = new(StringComparer.Ordinal);

    /// <summary>Values by the path of their field.</summary>
    public Dictionary<string, BriefValue> Values { get; } = new(StringComparer.Ordinal);

    /// <summary>What is wrong so far.</summary>
    public List<BriefFault> Faults { get; } = [];

    /// <summary>Fields and groups that somebody meant to write, though the value or the name may be wrong: none is missing as well.</summary>
    public HashSet<string> Meant { get; } = new(StringComparer.Ordinal);

    /// <summary>True where the text is not JSON, or not an object, so that the rest was not read.</summary>
    public bool IsBroken { get; private set; }

    /// <summary>Where a group opens, or the brief itself where the group is not there.</summary>
    public (int Line, int Column) PlaceOf(string group) => groups.TryGetValue(group, out var place) ? place : groups[""];

    /// <summary>Reads the whole text.</summary>
    public void Run()
    {
        var text = utf8.Span;
        var mark = text.StartsWith("\uFEFF"u8) ? 3 : 0;
        var reader = new Utf8JsonReader(text[mark..], new JsonReaderOptions { MaxDepth = DeepestLevel });
        try
        {
            reader.Read();
            if (reader.TokenType != JsonTokenType.StartObject)
            {
                IsBroken = true;
                Fault(ref reader, "", Words(ref reader), "an object with the fields of a brief", "begin with { \"name\": \"...\" }");
                return;
            }

            groups[""] = Place(reader.TokenStartIndex);
            Members(ref reader, "");
            if (Faults.Count >= MostFaults)
            {
                IsBroken = true;
                Fault(ref reader, "", $"{Faults.Count} faults so far", "a brief", "mend these first; the rest was not read");
                return;
            }

            reader.Read();
        }
        catch (JsonException slip)
        {
            IsBroken = true;
            Faults.Add(JsonSlip.Describe(text[mark..], slip, reader.CurrentDepth >= DeepestLevel - 1));
        }
    }

    private void Members(ref Utf8JsonReader reader, string group)
    {
        var seen = new HashSet<string>(StringComparer.Ordinal);
        while (Faults.Count < MostFaults && reader.Read() && reader.TokenType == JsonTokenType.PropertyName)
        {
            var at = reader.TokenStartIndex;
            var name = Text(ref reader);
            var path = group.Length > 0 ? $"{group}.{name}" : name;
            if (!seen.Add(name))
            {
                FaultAt(at, Plain(path), $"\"{Plain(name)}\" a second time", "every field once", "remove one of the two");
                reader.Skip();
                continue;
            }

            var isGroup = group.Length == 0 && BriefFields.Groups.Any(known => known.Name == name);
            var field = isGroup ? null : BriefFields.At(path);
            if (isGroup)
            {
                reader.Read();
                Group(ref reader, name);
            }
            else if (field is null || (group.Length == 0 && field.Group.Length > 0))
            {
                FaultAt(at, Plain(path), $"an unknown field \"{Plain(name)}\"", group.Length > 0 ? $"a field of {group}" : "a field of the brief", UnknownHint(group, name));
                reader.Skip();
            }
            else
            {
                reader.Read();
                Meant.Add(path);
                Value(ref reader, field);
            }
        }
    }

    private void Group(ref Utf8JsonReader reader, string name)
    {
        if (reader.TokenType == JsonTokenType.StartObject)
        {
            groups[name] = Place(reader.TokenStartIndex);
            Members(ref reader, name);
            return;
        }

        var some = string.Join(", ", BriefFields.In(name).Take(3).Select(field => field.Name));
        Meant.Add(name);
        Fault(ref reader, name, Words(ref reader), "a group in braces", $"write {{ ... }} with fields such as {some}, or leave the group out");
        reader.Skip();
    }

    private void Value(ref Utf8JsonReader reader, BriefField field)
    {
        var (line, column) = Place(reader.TokenStartIndex);
        BriefValue? value = reader.TokenType switch
        {
            JsonTokenType.Number when reader.TryGetDouble(out var number) => new BriefValue(number, null, null, line, column),
            JsonTokenType.String => new BriefValue(null, Text(ref reader), null, line, column),
            JsonTokenType.True or JsonTokenType.False => new BriefValue(null, null, reader.GetBoolean(), line, column),
            _ => null,
        };
        if (value is null)
        {
            var hint = reader.TokenType == JsonTokenType.Null && !field.IsRequired ? "leave the field out for its default" : FieldRules.Hint(field, null);
            Fault(ref reader, field.Path, Words(ref reader), field.Expected, hint);
            reader.Skip();
        }
        else if (FieldRules.Accepts(field, value))
        {
            Values[field.Path] = value;
        }
        else
        {
            Fault(ref reader, field.Path, Words(ref reader), field.Expected, FieldRules.Hint(field, value));
        }
    }

    private string UnknownHint(string group, string name)
    {
        if (group.Length == 0 && BriefFields.All.FirstOrDefault(field => field.Group.Length > 0 && (field.Name == name || field.Path == name)) is { } inner)
        {
            return $"{inner.Name} belongs into the group {inner.Group}";
        }

        var known = group.Length > 0
            ? BriefFields.In(group).Select(field => field.Name).ToArray()
            : [.. BriefFields.In("").Select(field => field.Name), .. BriefFields.Groups.Select(other => other.Name)];
        if (NearestField.Of(name, known) is not { } near)
        {
            return "known are " + string.Join(", ", known);
        }

        Meant.Add(group.Length > 0 ? $"{group}.{near}" : near);
        return $"did you mean \"{near}\"?";
    }

    /// <summary>The text at the reader. A lone half of a surrogate pair is the one thing that valid UTF-8 and valid JSON still cannot turn into text.</summary>
    internal static string Text(ref Utf8JsonReader reader)
    {
        try
        {
            return reader.GetString() ?? "";
        }
        catch (InvalidOperationException)
        {
            return "\uFFFD";
        }
    }

    /// <summary>What stands at the reader, short and safe to print.</summary>
    internal static string Words(ref Utf8JsonReader reader) => reader.TokenType switch
    {
        JsonTokenType.StartObject => "a group in braces",
        JsonTokenType.StartArray => "a list in brackets",
        JsonTokenType.String => $"\"{Plain(Text(ref reader))}\"",
        JsonTokenType.Null => "null",
        _ => Plain(Encoding.UTF8.GetString(reader.ValueSpan)),
    };

    /// <summary>Text for a message: at most 40 characters, control characters shown as a question mark.</summary>
    internal static string Plain(string text)
    {
        var runes = text.EnumerateRunes().Take(41).ToArray();
        var isLong = runes.Length > 40;
        var plain = new StringBuilder();
        foreach (var rune in isLong ? runes.AsSpan(0, 37) : runes)
        {
            plain.Append(Rune.IsControl(rune) ? "?" : rune.ToString());
        }

        return isLong ? plain.Append("...").ToString() : plain.ToString();
    }

    private (int Line, int Column) Place(long offset) => TextPlace.Of(utf8.Span, offset + (utf8.Span.StartsWith("\uFEFF"u8) ? 3 : 0));

    private void Fault(ref Utf8JsonReader reader, string path, string read, string expected, string hint)
        => FaultAt(reader.TokenStartIndex, path, read, expected, hint);

    private void FaultAt(long offset, string path, string read, string expected, string hint)
    {
        var (line, column) = Place(offset);
        Faults.Add(new BriefFault(path, line, column, read, expected, hint));
    }
}
