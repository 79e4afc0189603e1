using System.Globalization;

namespace Linewright.Brief;

/// <summary>One thing that is wrong with a brief, in words that say how to put it right.</summary>
/// <param name="Path">The field, or the place in the file; empty for the whole file.</param>
/// <param name="Line">1-based line of the value, null where the fault has no place in the file.</param>
/// <param name="Column">1-based column in characters.</param>
/// <param name="Read">What was read.</param>
/// <param name="Expected">What was expected.</param>
/// <param name="Hint">What would work.</param>
/// <param name="IsFromSet">True where the value came from --set and not from the file.</param>
public sealed record BriefFault(string Path, int? Line, int? Column, string Read, string Expected, string Hint, bool IsFromSet = false)
{
    /// <summary>The message: file:line:column: what was read, what was expected, what would work.</summary>
    public string Describe(string fileName)
    {
        var place = IsFromSet
            ? $"--set {Path}"
            : fileName + (Line is { } line ? string.Create(CultureInfo.InvariantCulture, $":{line}:{Column}") : "");
        var subject = IsFromSet || Path.Length == 0 ? "" : Path + ": ";
        return $"{place}: {subject}read {Read}, expected {Expected}" + (Hint.Length > 0 ? $"; {Hint}" : "");
    }
}
