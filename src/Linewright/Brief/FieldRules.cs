using Linewright.Materials;

namespace Linewright.Brief;

/// <summary>Holds a value against its field, the same way for a file and for --set.</summary>
internal static class FieldRules
{
    /// <summary>True where the value may stand in the field.</summary>
    public static bool Accepts(BriefField field, BriefValue value) => field.Kind switch
    {
        FieldKind.Flag => value.Flag is not null,
        FieldKind.Choice => value.Text is { } word && field.Choices.Contains(word, StringComparer.Ordinal),
        FieldKind.Text => value.Text is { } text && IsReadable(text, field.LongestText),
        _ => value.Number is { } number && IsWithin(field, number),
    };

    /// <summary>What would work instead.</summary>
    public static string Hint(BriefField field, BriefValue? value) => field.Kind switch
    {
        FieldKind.Choice when value?.Text is { } word => NearestName.Of(word, field.Choices) is { } near
            ? $"did you mean \"{near}\"?"
            : field.Choices.Count <= 6 ? "write one of them in quotes" : "known are " + string.Join(", ", field.Choices),
        FieldKind.Choice => $"write a word in quotes, such as \"{field.Example}\"",
        FieldKind.Text => "write a short text in quotes, without control characters",
        FieldKind.Flag => "write true or false without quotes",
        _ => NumberHint(field, value),
    };

    private static string NumberHint(BriefField field, BriefValue? value)
    {
        var byDefault = field.IsRequired || field.DefaultText.Length == 0 ? "" : $", or leave it out for {field.DefaultText}";
        if (value?.Number is not { } number)
        {
            return $"write a plain number without quotes{(field.Unit.Length > 0 ? " or unit" : "")}{byDefault}";
        }

        var nearest = double.IsNaN(number) ? field.Low : Math.Clamp(number, field.Low, field.High);
        if (field.Step > 0)
        {
            nearest = Math.Clamp(Math.Round(nearest / field.Step) * field.Step, field.Low, field.High);
        }

        return $"{BriefField.Format(nearest)} is the nearest that works{byDefault}";
    }

    private static bool IsWithin(BriefField field, double number)
        => number >= field.Low && number <= field.High && (field.Step <= 0 || Math.IEEERemainder(number, field.Step) == 0);

    private static bool IsReadable(string text, int longest)
        => !string.IsNullOrWhiteSpace(text) && text.EnumerateRunes().Count() <= longest
            && !text.EnumerateRunes().Any(rune => System.Text.Rune.IsControl(rune) || rune.Value == 0xFFFD);
}
