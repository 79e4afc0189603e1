using System.Globalization;

namespace Linewright.Brief;

/// <summary>Values given beside the file, stone.diameter_mm=3.5, held to the same rules as those in it.</summary>
internal static class BriefAssignments
{
    private static readonly string[] LengthForms = ["length.laid_flat_mm", "length.laid_flat_in", "length.wrist_mm", "length.ease_mm"];

    /// <summary>The values with the assignments laid over them; faults are added to the list.</summary>
    public static Dictionary<string, BriefValue> Apply(IReadOnlyDictionary<string, BriefValue> values, IReadOnlyList<string> assignments, List<BriefFault> faults)
    {
        var result = new Dictionary<string, BriefValue>(values, StringComparer.Ordinal);
        var given = new HashSet<string>(StringComparer.Ordinal);
        foreach (var assignment in assignments)
        {
            var cut = assignment.IndexOf('=', StringComparison.Ordinal);
            if (cut <= 0)
            {
                faults.Add(Fault(BriefScan.Plain(assignment), "no =", "a field, =, and a value", "write --set stone.diameter_mm=3.5"));
                continue;
            }

            var (path, text) = (assignment[..cut].Trim(), assignment[(cut + 1)..].Trim());
            if (BriefFields.At(path) is not { } field)
            {
                faults.Add(Unknown(path));
                continue;
            }

            if (!given.Add(path))
            {
                faults.Add(Fault(path, $"{path} a second time", "every field once", "remove one of the two"));
                continue;
            }

            var value = Parse(field, text);
            if (!FieldRules.Accepts(field, value))
            {
                faults.Add(Fault(path, text.Length == 0 ? "nothing" : BriefScan.Plain(text), field.Expected, FieldRules.Hint(field, value)));
                continue;
            }

            // Another form of length takes the place of the file's; two given beside the file stay two, and are refused.
            if (path is "length.laid_flat_mm" or "length.laid_flat_in" or "length.wrist_mm")
            {
                var keep = path == "length.wrist_mm" ? "length.ease_mm" : path;
                foreach (var form in LengthForms.Where(form => form != keep && result.GetValueOrDefault(form)?.Line is not null))
                {
                    result.Remove(form);
                }
            }

            result[path] = value;
        }

        return result;
    }

    private static BriefFault Unknown(string path)
    {
        if (BriefFields.Groups.Any(group => group.Name == path))
        {
            var names = BriefFields.In(path).Select(field => field.Name);
            return Fault(path, "a group", "one of its fields", $"write {path}. and one of {string.Join(", ", names)}");
        }

        var near = NearestField.Of(path, [.. BriefFields.All.Select(known => known.Path)]);
        return Fault(
            BriefScan.Plain(path), $"an unknown field \"{BriefScan.Plain(path)}\"", "the path of a field of the brief",
            near is null ? "write group.field, such as stone.diameter_mm" : $"did you mean \"{near}\"?");
    }

    private static BriefValue Parse(BriefField field, string text) => field.Kind switch
    {
        FieldKind.Number => new BriefValue(double.TryParse(text, NumberStyles.Float, CultureInfo.InvariantCulture, out var number) ? number : null, null, null, null, null),
        FieldKind.Flag => new BriefValue(null, null, text switch { "true" => true, "false" => false, _ => null }, null, null),
        _ => new BriefValue(null, text, null, null, null),
    };

    private static BriefFault Fault(string path, string read, string expected, string hint)
        => new(path, null, null, read, expected, hint, IsFromSet: true);
}
