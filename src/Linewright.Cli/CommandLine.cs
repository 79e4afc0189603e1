using System.CommandLine;

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
            SchemaVerb.Create(desk),
            StudioVerb.Create(desk),
        };
        var parse = root.Parse(args, new ParserConfiguration { ResponseFileTokenReplacer = null });
        if (parse.Errors.Count > 0)
        {
            foreach (var error in parse.Errors)
            {
                desk.Error.WriteLine($"linewright: {error.Message}");
            }

            var verb = parse.CommandResult.Command is RootCommand ? "" : parse.CommandResult.Command.Name + " ";
            desk.Error.WriteLine($"linewright: 'linewright {verb}--help' says what would work");
            return ExitCode.Asked;
        }

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
            return parse.InvokeAsync(way, stop).GetAwaiter().GetResult();
        }
        catch (RefusalException refusal)
        {
            desk.Error.WriteLine(refusal.Message);
            return refusal.ExitCode;
        }
        catch (OperationCanceledException)
        {
            desk.Error.WriteLine("linewright: stopped; nothing was written");
            return ExitCode.Stopped;
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
}
