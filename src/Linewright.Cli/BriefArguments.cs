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
    public ResolvedBrief Read(ParseResult parse, Desk desk)
    {
        var path = parse.GetRequiredValue(Brief);
        var assignments = parse.GetValue(Set) ?? [];
        if (string.IsNullOrWhiteSpace(path))
        {
            throw new RefusalException(ExitCode.Asked, "BRIEF: read an empty name, expected a brief; name its file, or use - for standard input");
        }

        BriefResult result;
        if (path == "-")
        {
            result = BriefReader.Read(desk.In, "standard input", assignments);
        }
        else
        {
            using var file = Open(path);
            result = BriefReader.Read(file, path, assignments);
        }

        return result.Brief is { } brief
            ? BriefDefaults.Resolve(brief)
            : throw new RefusalException(ExitCode.Asked, string.Join('\n', result.Messages));
    }

    private static FileStream Open(string path)
    {
        try
        {
            return Directory.Exists(path)
                ? throw new RefusalException(ExitCode.Asked, $"{path}: read a folder, expected a brief; name the JSON file in it")
                : new FileStream(path, FileMode.Open, FileAccess.Read, FileShare.Read);
        }
        catch (Exception slip) when (slip is FileNotFoundException or DirectoryNotFoundException)
        {
            throw new RefusalException(ExitCode.Asked, $"{path}: no such file, expected a brief; check the path, or use - for standard input");
        }
        catch (UnauthorizedAccessException)
        {
            throw new RefusalException(ExitCode.Asked, $"{path}: may not be read, expected a brief; check the rights of the file");
        }
        catch (Exception slip) when (slip is IOException or ArgumentException or NotSupportedException)
        {
            throw new RefusalException(ExitCode.Asked, $"{path}: cannot be opened, expected a brief; {slip.Message}");
        }
    }
}
