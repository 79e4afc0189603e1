using System.CommandLine;
using System.Runtime.InteropServices;

namespace Linewright.Cli;

/// <summary>The program: reads the arguments, runs a verb, answers with an exit code and never with a trace.</summary>
internal static class CommandLine
{
    // A verb that is stopped has this long to clear its half-written folder away.
    private static readonly TimeSpan StopTime = TimeSpan.FromSeconds(2);

    /// <summary>Runs the program once; stopping it from outside has the effect of Ctrl+C.</summary>
    public static int Run(IReadOnlyList<string> args, Desk desk, CancellationToken stop = default)
    {
        var root = new RootCommand("Linewright solves articulated, stone-set line pieces: from a brief to checked, castable parts.")
        {
            PlanVerb.Create(desk),
            CheckVerb.Create(desk),
            MakeVerb.Create(desk),
            WeighVerb.Create(desk),
            SheetVerb.Create(desk),
            QuoteVerb.Create(desk),
            SchemaVerb.Create(desk),
            ToleranceVerb.Create(desk),
            PlateVerb.Create(desk),
            PictureVerb.Create(desk),
            StudioVerb.Create(desk),
        };
        var parse = root.Parse(args, new ParserConfiguration { ResponseFileTokenReplacer = null });
        if (parse.Errors.Count > 0)
        {
            foreach (var line in Slips(parse))
            {
                desk.Error.WriteLine($"linewright: {line}");
            }

            return ExitCode.Asked;
        }

        // A closed terminal is heard like Ctrl+C; the framework hears only that and the request to end.
        using var hangUp = CancellationTokenSource.CreateLinkedTokenSource(stop);
        using var onHangUp = OperatingSystem.IsWindows() ? null : PosixSignalRegistration.Create(PosixSignal.SIGHUP, signal =>
        {
            signal.Cancel = true;
            hangUp.Cancel();
        });
        try
        {
            using var output = new StreamWriter(desk.Out, leaveOpen: true);
            var way = new InvocationConfiguration
            {
                Output = output,
                Error = desk.Error,
                EnableDefaultExceptionHandler = false,
                ProcessTerminationTimeout = StopTime,
            };
            var code = parse.InvokeAsync(way, hangUp.Token).GetAwaiter().GetResult();
            return code is ExitCode.Stopped or ExitCode.Ended ? Stopped(desk) : code;
        }
        catch (RefusalException refusal)
        {
            desk.Error.WriteLine(refusal.Message);
            return refusal.ExitCode;
        }
        catch (OperationCanceledException)
        {
            return Stopped(desk);
        }
#pragma warning disable CA1031 // The last door: whatever went wrong, the designer gets a sentence.
        catch (Exception fault)
#pragma warning restore CA1031
        {
            desk.Error.WriteLine(desk.ShowsTrace
                ? fault.ToString()
                : $"linewright: a fault of ours: {fault.Message.ReplaceLineEndings(" ")} (LINEWRIGHT_TRACE=1 shows where)");
            return ExitCode.Ours;
        }
    }

    private static int Stopped(Desk desk)
    {
        desk.Error.WriteLine("linewright: stopped; nothing was written");
        return ExitCode.Stopped;
    }

    private static IEnumerable<string> Slips(ParseResult parse)
    {
        var verb = parse.CommandResult.Command is RootCommand ? null : parse.CommandResult.Command;
        if (verb is null && parse.UnmatchedTokens is [var word, ..] && !word.StartsWith('-'))
        {
            var verbs = parse.RootCommandResult.Command.Subcommands.Select(known => known.Name);
            yield return $"read '{word}', expected one of {string.Join(", ", verbs)}";
        }
        else
        {
            foreach (var error in parse.Errors)
            {
                yield return error.Message;
            }
        }

        yield return $"'linewright {(verb is null ? "" : verb.Name + " ")}--help' says what would work";
    }
}
