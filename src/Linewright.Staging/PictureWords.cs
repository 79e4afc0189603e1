using System.Collections.Immutable;
using System.Globalization;
using Linewright.Pictures.Images;

namespace Linewright.Staging;

/// <summary>How the choices of a picture are written, at whatever door: scenes, grounds and qualities in lower case, sizes as 1920x1080.</summary>
public static class PictureWords
{
    /// <summary>Shortest side that can be asked for, pixels.</summary>
    public const int LeastSide = 16;

    /// <summary>Longest side, pixels.</summary>
    public const int LargestSide = 16384;

    /// <summary>All choices of a kind.</summary>
    public static ImmutableArray<string> All<T>()
        where T : struct, Enum => [.. Enum.GetValues<T>().Select(Of)];

    /// <summary>One choice.</summary>
    public static string Of<T>(T choice)
        where T : struct, Enum => choice.ToString().ToLowerInvariant();

    /// <summary>The choice that a word stands for, null where it is none.</summary>
    public static T? Read<T>(string word)
        where T : struct, Enum => Enum.GetValues<T>().Where(choice => Of(choice) == word).Cast<T?>().FirstOrDefault();

    /// <summary>A size written as WIDTHxHEIGHT, null where it is none or a side is out of range.</summary>
    public static PictureSize? ReadSize(string text)
    {
        ArgumentNullException.ThrowIfNull(text);
        var parts = text.Split('x');
        return parts.Length == 2 && Side(parts[0]) is { } width && Side(parts[1]) is { } height ? new PictureSize(width, height) : null;

        static int? Side(string text)
            => int.TryParse(text, NumberStyles.None, CultureInfo.InvariantCulture, out var side) && side is >= LeastSide and <= LargestSide ? side : null;
    }
}
