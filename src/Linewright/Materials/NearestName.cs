namespace Linewright.Materials;

/// <summary>Finds the name that was probably meant when another was written.</summary>
public static class NearestName
{
    // A longer word is no key of ours and would only cost time.
    private const int LongestWord = 64;

    /// <summary>The closest of the names, or null where none is near enough to be worth suggesting.</summary>
    /// <remarks>Near enough: at most a third of the letters differ, or one name begins with the other.</remarks>
    public static string? Of(string word, IEnumerable<string> names)
    {
        if (word.Length is 0 or > LongestWord)
        {
            return null;
        }

        string? best = null;
        var fewest = int.MaxValue;
        foreach (var name in names)
        {
            var begins = word.Length >= 3 && (name.StartsWith(word, StringComparison.OrdinalIgnoreCase) || word.StartsWith(name, StringComparison.OrdinalIgnoreCase));
            var distance = Distance(word, name);
            var isNear = begins || distance * 3 <= Math.Max(word.Length, name.Length);
            var rank = begins ? Math.Min(distance, 2) : distance;
            if (isNear && rank < fewest)
            {
                (best, fewest) = (name, rank);
            }
        }

        return best;
    }

    // Letters to insert, drop or replace. Source: Wagner and Fischer (1974), J. ACM 21, The String-to-String Correction Problem.
    private static int Distance(string a, string b)
    {
        var previous = new int[b.Length + 1];
        var current = new int[b.Length + 1];
        for (var j = 0; j <= b.Length; j++)
        {
            previous[j] = j;
        }

        for (var i = 1; i <= a.Length; i++)
        {
            current[0] = i;
            for (var j = 1; j <= b.Length; j++)
            {
                var replaced = previous[j - 1] + (char.ToLowerInvariant(a[i - 1]) == char.ToLowerInvariant(b[j - 1]) ? 0 : 1);
                current[j] = Math.Min(replaced, Math.Min(previous[j], current[j - 1]) + 1);
            }

            (previous, current) = (current, previous);
        }

        return previous[b.Length];
    }
}
