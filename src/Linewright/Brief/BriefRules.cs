namespace Linewright.Brief;

/// <summary>What a brief must say, and what its values must be to each other.</summary>
internal static class BriefRules
{
    private static readonly string[] LengthForms = ["length.laid_flat_mm", "length.laid_flat_in", "length.wrist_mm"];

    /// <summary>Adds a fault for every required field that nobody wrote.</summary>
    public static void Missing(IReadOnlyDictionary<string, BriefValue> values, BriefScan scan, List<BriefFault> faults)
    {
        bool IsGiven(string path) => values.ContainsKey(path) || scan.Meant.Contains(path) || scan.Meant.Contains(GroupOf(path));
        foreach (var field in BriefFields.All.Where(field => field.IsRequired && !IsGiven(field.Path)))
        {
            var (line, column) = scan.PlaceOf(field.Group);
            var example = field.Kind == FieldKind.Number ? BriefField.Format(3) : field.Kind == FieldKind.Choice ? $"\"{field.Example}\"" : "\"Harbour lights\"";
            faults.Add(new BriefFault(field.Path, line, column, "nothing", field.Expected, $"add \"{field.Name}\": {example}"));
        }

        if (!LengthForms.Any(IsGiven))
        {
            var (line, column) = scan.PlaceOf("length");
            faults.Add(new BriefFault("length", line, column, "no length", "one of laid_flat_mm, laid_flat_in or wrist_mm", "add \"length\": { \"laid_flat_mm\": 178 }"));
        }
    }

    /// <summary>Adds a fault for every value that contradicts another.</summary>
    public static void Together(IReadOnlyDictionary<string, BriefValue> values, List<BriefFault> faults)
    {
        var given = LengthForms.Where(values.ContainsKey).ToArray();
        foreach (var extra in given.Skip(1))
        {
            Fault(values, extra, faults, $"{BriefFields.At(extra)!.Name} beside {BriefFields.At(given[0])!.Name}", "exactly one form of length", "remove one of the two");
        }

        if (values.ContainsKey("length.ease_mm") && !values.ContainsKey("length.wrist_mm"))
        {
            Fault(values, "length.ease_mm", faults, "ease_mm without wrist_mm", "ease_mm only beside wrist_mm", "remove ease_mm, or give the length as wrist_mm");
        }

        double? Number(string path) => values.GetValueOrDefault(path)?.Number;
        if (Number("clasp.length_min_mm") is { } shortest && Number("clasp.length_max_mm") is { } longest && shortest > longest)
        {
            Fault(values, "clasp.length_max_mm", faults, BriefField.Format(longest), $"at least length_min_mm, {Least(shortest)} mm", "raise the one or lower the other");
        }

        if (given.Length == 1 && faults.Count == 0)
        {
            Gaps(values, faults);
        }
    }

    // The layout looks between the smallest and the largest gap; the preferred one must lie there.
    private static void Gaps(IReadOnlyDictionary<string, BriefValue> values, List<BriefFault> faults)
    {
        var gap = values.GetValueOrDefault("link.stone_gap_mm")?.Number ?? BriefDefaults.StoneGapMm(values["stone.diameter_mm"].Number!.Value);
        if (values.GetValueOrDefault("link.stone_gap_min_mm")?.Number is { } least && least > gap)
        {
            Fault(values, "link.stone_gap_min_mm", faults, BriefField.Format(least), $"at most stone_gap_mm, {Most(gap)} mm", "lower it, or raise stone_gap_mm");
        }

        if (values.GetValueOrDefault("link.stone_gap_max_mm")?.Number is { } most && most < gap)
        {
            Fault(values, "link.stone_gap_max_mm", faults, BriefField.Format(most), $"at least stone_gap_mm, {Least(gap)} mm", "raise it, or lower stone_gap_mm");
        }
    }

    // Six decimals at most, as fields are printed, but never to the side that is refused again.
    private static string Least(double value) => Short(LimitText.AtLeast(value, 6));

    private static string Most(double value) => Short(LimitText.AtMost(value, 6));

    private static string Short(string number) => number.TrimEnd('0').TrimEnd('.');

    private static string GroupOf(string path) => path[..Math.Max(0, path.IndexOf('.', StringComparison.Ordinal))];

    private static void Fault(IReadOnlyDictionary<string, BriefValue> values, string path, List<BriefFault> faults, string read, string expected, string hint)
    {
        var value = values[path];
        faults.Add(new BriefFault(path, value.Line, value.Column, read, expected, hint, IsFromSet: value.Line is null));
    }
}
