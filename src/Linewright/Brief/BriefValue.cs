namespace Linewright.Brief;

/// <summary>A value as it was written in a brief, and where.</summary>
/// <param name="Number">Set in a number field.</param>
/// <param name="Text">Set in a text or choice field.</param>
/// <param name="Flag">Set in a true-or-false field.</param>
/// <param name="Line">1-based; null where it came from --set.</param>
/// <param name="Column">1-based, in characters; null where it came from --set.</param>
public sealed record BriefValue(double? Number, string? Text, bool? Flag, int? Line, int? Column)
{
    /// <summary>The value as a person would write it.</summary>
    public string Words => Number is { } number ? BriefField.Format(number) : Flag is { } flag ? (flag ? "true" : "false") : $"\"{Text}\"";
}
