using System.Runtime.InteropServices;
using Linewright.Studio.Serving;

// linewright-studio [BRIEF or FOLDER] [--port N] [--no-open]
var rest = args.Where(arg => !arg.StartsWith("--", StringComparison.Ordinal)).ToList();
var portAt = Array.IndexOf(args, "--port");
int? port = null;
if (portAt >= 0)
{
    var isNumber = int.TryParse(args.ElementAtOrDefault(portAt + 1), System.Globalization.CultureInfo.InvariantCulture, out var asked);
    if (!isNumber || asked is < 0 or > 65535)
    {
        await Console.Error.WriteLineAsync("--port: expected a number from 0 to 65535").ConfigureAwait(false);
        return 2;
    }

    port = asked;
    rest.Remove(args[portAt + 1]);
}

using var stop = new CancellationTokenSource();
using var onInterrupt = PosixSignalRegistration.Create(PosixSignal.SIGINT, Stop);
using var onTerminate = PosixSignalRegistration.Create(PosixSignal.SIGTERM, Stop);
try
{
    var options = StudioOptions.For(rest.FirstOrDefault(), Console.Out) with { Port = port, OpensBrowser = !args.Contains("--no-open", StringComparer.Ordinal) };
    await StudioServer.RunAsync(options, stop.Token).ConfigureAwait(false);
    return 0;
}
catch (Exception slip) when (slip is IOException or UnauthorizedAccessException)
{
    await Console.Error.WriteLineAsync(slip.Message).ConfigureAwait(false);
    return 2;
}

void Stop(PosixSignalContext context)
{
    context.Cancel = true;
    stop.Cancel();
}
