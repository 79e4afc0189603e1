using System.CommandLine;
using Linewright.Brief;

namespace Linewright.Cli;

/// <summary>What plan, check, weigh and make have in common: BRIEF, --set and --json.</summary>
internal sealed class BriefArguments
{
    /// <summary>The path of the brief; - is standard input.</summary>
    public Argument<string> Brief { get; } = new("BRIEF") { Description = "The brief, a JSON file; - reads it from standard input." };

    /// <summary>Values that replace those of the file.</summary>
    public Option<string[]> Set { get; } = new("--set")
    {
        Description = "Replaces a value of the brief, such as --set stone.diameter_mm=3.5; may be given again.",
        HelpName = "FIELD=VALUE",
        Arity = ArgumentArity.OneOrMore,
    };

    /// <summary>Prints the report instead of tables.</summary>
    public Option<bool> Json { get; } = new("--json") { Description = "Prints the report as JSON." };

    /// <summary>Adds the three to a verb.</summary>
    public void AddTo(Command verb)
    {
        verb.Arguments.Add(Brief);
        verb.Options.Add(Set);
        verb.Options.Add(Json);
    }

    /// <summary>Reads the brief and fills in its defaults; every fault goes to the error stream.</summary>
    /// <exception cref="RefusalException">The brief cannot be read or has faults.</exception>
    public ResolvedBrief Read(ParseResult parse, Desk desk) => ReadEach(parse, desk, [[]])[0];

    // A value that came from a grid is named by the option that it stands in.
    private static string Named(string message, IReadOnlyList<string> further)
        => further.Any(assignment => message.StartsWith($"--set {assignment.Split('=')[0]}:", StringComparison.Ordinal)) ? "--grid" + message["--set".Length..] : message;

    /// <summary>Reads the brief once for each list of further assignments; every fault goes to the error stream, each once.</summary>
    /// <exception cref="RefusalException">The brief cannot be read, or it has faults with some of the assignments.</exception>
    public IReadOnlyList<ResolvedBrief> ReadEach(ParseResult parse, Desk desk, IReadOnlyList<IReadOnlyList<string>> further)
    {
        var path = parse.GetRequiredValue(Brief);
        if (string.IsNullOrWhiteSpace(path))
        {
            throw new RefusalException(ExitCode.Asked, "BRIEF: read an empty name, expected a brief; name its file, or use - for standard input");
        }

        var bytes = new byte[BriefReader.LargestBytes + 1];
        int length;
        if (path == "-")
        {
            length = desk.In.ReadAtLeast(bytes, bytes.Length, throwOnEndOfStream: false);
        }
        else
        {
            using var file = NamedFile.Open(path, "a brief");
            length = file.ReadAtLeast(bytes, bytes.Length, throwOnEndOfStream: false);
        }

        var set = parse.GetValue(Set) ?? [];
        var results = further.Select(more => BriefReader.Override(bytes.AsMemory(0, length), path == "-" ? "standard input" : path, [.. set, .. more])).ToList();
        var faults = results.Zip(further).SelectMany(each => each.First.Messages.Select(message => Named(message, each.Second))).Distinct(StringComparer.Ordinal).ToList();
        return faults.Count == 0
            ? [.. results.Select(result => BriefDefaults.Resolve(result.Brief!))]
            : throw new RefusalException(ExitCode.Asked, string.Join('\n', faults));
    }
}
