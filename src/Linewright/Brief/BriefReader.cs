using System.Collections.Immutable;
using System.Text.Unicode;

namespace Linewright.Brief;

/// <summary>Reads a brief: plain JSON in UTF-8, every field known, every value in its range.</summary>
/// <remarks>
/// Never throws for what stands in a file, and collects every fault that can be seen in one pass. No comments and
/// no trailing commas: what other programs cannot read is not a brief. The same field twice is refused, because
/// two people would read it two ways.
/// </remarks>
public static class BriefReader
{
    /// <summary>Largest file that is looked at: 1 MiB, a thousand times a long brief.</summary>
    public const int LargestBytes = 1 << 20;

    /// <summary>Reads a brief from memory. The file name is only for messages.</summary>
    public static BriefResult Read(ReadOnlyMemory<byte> utf8, string fileName) => Override(utf8, fileName, []);

    /// <summary>Reads a brief from a stream, and stops at <see cref="LargestBytes"/>: a huge file is never loaded.</summary>
    public static BriefResult Read(Stream stream, string fileName, IReadOnlyList<string>? assignments = null)
    {
        var bytes = new byte[LargestBytes + 1];
        var length = stream.ReadAtLeast(bytes, bytes.Length, throwOnEndOfStream: false);
        return Override(bytes.AsMemory(0, length), fileName, assignments ?? []);
    }

    /// <summary>Reads a brief, then replaces or adds values by assignments such as stone.diameter_mm=3.5.</summary>
    /// <remarks>
    /// An assignment is held to the same range as the file. Giving one form of length by assignment replaces the
    /// file's form. Faults of the file remain faults: an assignment does not mend them.
    /// </remarks>
    public static BriefResult Override(ReadOnlyMemory<byte> utf8, string fileName, IReadOnlyList<string> assignments)
    {
        if (WholeFileFault(utf8.Span, "a brief") is { } whole)
        {
            return new BriefResult(fileName, null, [whole]);
        }

        var scan = new BriefScan(utf8);
        scan.Run();
        var faults = scan.Faults;
        var values = BriefAssignments.Apply(scan.Values, assignments, faults);

        // After a slip in the JSON itself the rest of the file is unread: missing fields would be guesses.
        if (!scan.IsBroken)
        {
            BriefRules.Missing(values, scan, faults);
        }

        if (faults.Count == 0)
        {
            BriefRules.Together(values, faults);
        }

        return faults.Count == 0
            ? new BriefResult(fileName, new DesignBrief(values.ToImmutableSortedDictionary(StringComparer.Ordinal)), [])
            : new BriefResult(fileName, null, [.. faults.OrderBy(fault => fault.Line ?? int.MaxValue).ThenBy(fault => fault.Column)]);
    }

    /// <summary>What is wrong with a file before it is looked at as JSON; null where nothing is.</summary>
    /// <param name="utf8">The file.</param>
    /// <param name="what">What it should be, for the message: a brief.</param>
    internal static BriefFault? WholeFileFault(ReadOnlySpan<byte> utf8, string what)
    {
        var plain = $"{what} as JSON in UTF-8";
        if (utf8.Length > LargestBytes)
        {
            return new BriefFault("", null, null, "more than 1 MiB", $"{what} of at most 1 MiB", $"{what} is a page of JSON; check that this is the right file");
        }

        if (utf8.StartsWith((ReadOnlySpan<byte>)[0xFF, 0xFE]) || utf8.StartsWith((ReadOnlySpan<byte>)[0xFE, 0xFF]))
        {
            return new BriefFault("", 1, 1, "UTF-16 text", plain, "save the file as UTF-8");
        }

        if (utf8.TrimStart(" \t\r\n"u8).IsEmpty)
        {
            return new BriefFault("", 1, 1, "an empty file", plain, "begin with { \"name\": \"...\" }");
        }

        if (!Utf8.IsValid(utf8))
        {
            var (line, column) = TextPlace.Of(utf8, FirstInvalid(utf8));
            return new BriefFault("", line, column, "bytes that are not UTF-8", plain, "save the file as UTF-8");
        }

        return null;
    }

    private static int FirstInvalid(ReadOnlySpan<byte> utf8)
    {
        var at = 0;
        while (at < utf8.Length && System.Text.Rune.DecodeFromUtf8(utf8[at..], out _, out var length) == System.Buffers.OperationStatus.Done)
        {
            at += length;
        }

        return at;
    }
}
