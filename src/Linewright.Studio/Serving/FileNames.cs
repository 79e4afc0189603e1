namespace Linewright.Studio.Serving;

/// <summary>What a file is called that leaves for the caller's own folder.</summary>
internal static class FileNames
{
    /// <summary>"Harbour lights" becomes harbour-lights, and the ending is added.</summary>
    public static string Of(string piece, string ending)
    {
        var plain = string.Concat(piece.Select(letter => char.IsAsciiLetterOrDigit(letter) ? char.ToLowerInvariant(letter) : '-')).Trim('-');
        return (plain.Length == 0 ? "piece" : plain) + ending;
    }
}
