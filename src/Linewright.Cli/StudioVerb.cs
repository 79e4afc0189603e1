using System.CommandLine;
using Linewright.Studio.Serving;

namespace Linewright.Cli;

/// <summary>studio: the piece in the browser, changed live. Serves on the loopback address until it is stopped.</summary>
internal static class StudioVerb
{
    public static Command Create(Desk desk)
    {
        var brief = new Argument<string?>("BRIEF")
        {
            Description = "A brief to open, or a folder of briefs; the present folder and the demo piece where left out.",
            Arity = ArgumentArity.ZeroOrOne,
        };
        var port = new Option<int?>("--port") { Description = "The port on 127.0.0.1; 0 takes any that is free.", HelpName = "N" };
        var noOpen = new Option<bool>("--no-open") { Description = "Prints the address and opens no browser." };
        var verb = new Command("studio", "Shows the piece in the browser and changes it live.") { brief, port, noOpen };
        verb.SetAction(async (parse, stop) =>
        {
            var output = new StreamWriter(desk.Out, leaveOpen: true);
            await using (output.ConfigureAwait(false))
            {
                await StudioServer.RunAsync(Options(parse.GetValue(brief), output) with { Port = parse.GetValue(port), OpensBrowser = !parse.GetValue(noOpen) }, stop).ConfigureAwait(false);
                return ExitCode.Done;
            }
        });
        return verb;
    }

    private static StudioOptions Options(string? path, TextWriter output)
    {
        try
        {
            return StudioOptions.For(path, output);
        }
        catch (FileNotFoundException slip)
        {
            throw new RefusalException(ExitCode.Asked, slip.Message);
        }
    }
}
