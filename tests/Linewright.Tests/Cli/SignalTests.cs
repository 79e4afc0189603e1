using System.Diagnostics;
using System.Globalization;
using Linewright.Cli;

namespace Linewright.Tests.Cli;

/// <summary>The program as the shell starts it, stopped from outside while it works.</summary>
public sealed class SignalTests : IDisposable
{
    private readonly string folder = Directory.CreateTempSubdirectory("linewright-tests-").FullName;

    public void Dispose() => Directory.Delete(folder, recursive: true);

    [Theory]
    [InlineData("INT", 2)] // Standard: POSIX numbers of the signals
    [InlineData("TERM", 15)]
    [InlineData("HUP", 1)]
    public async Task A_make_that_is_stopped_clears_its_folder_away_and_says_so_in_one_line(string signal, int number)
    {
        Assert.SkipWhen(OperatingSystem.IsWindows(), "Windows has no signals to send");
        Assert.SkipWhen(IsIgnored(number), $"whoever started the tests has {signal} ignored");
        var brief = Path.Combine(folder, "brief.json");
        File.WriteAllText(brief, SampleReport.Brief);
        using var program = Start(["make", brief, "--out", Path.Combine(folder, "out")]);
        var error = program.StandardError.ReadToEndAsync(TestContext.Current.CancellationToken);
        var output = program.StandardOutput.ReadToEndAsync(TestContext.Current.CancellationToken);

        // The hidden folder says that the work has begun; the whole of it takes many times as long as this look.
        while (Directory.GetDirectories(folder).Length == 0 && !program.HasExited)
        {
            await Task.Delay(5, TestContext.Current.CancellationToken);
        }

        using (var kill = Process.Start("kill", [$"-{signal}", program.Id.ToString(CultureInfo.InvariantCulture)]))
        {
            await kill.WaitForExitAsync(TestContext.Current.CancellationToken);
        }

        await program.WaitForExitAsync(TestContext.Current.CancellationToken);
        Assert.Equal((ExitCode.Stopped, "", "linewright: stopped; nothing was written\n"), (program.ExitCode, await output, await error));
        Assert.Equal([brief], Directory.EnumerateFileSystemEntries(folder));
    }

    [Theory]
    [InlineData("schema")]
    [InlineData("plan", "--json")]
    public async Task A_reader_that_goes_away_leaves_no_trace_of_ours(params string[] args)
    {
        var brief = Path.Combine(folder, "brief.json");
        File.WriteAllText(brief, SampleReport.Brief);
        using var program = Start(args is ["schema"] ? args : [.. args, brief]);
        program.StandardOutput.Close();
        var error = await program.StandardError.ReadToEndAsync(TestContext.Current.CancellationToken);
        await program.WaitForExitAsync(TestContext.Current.CancellationToken);
        Assert.DoesNotContain("   at ", error, StringComparison.Ordinal);
        Assert.DoesNotContain("Exception", error, StringComparison.Ordinal);
        Assert.True(program.ExitCode is ExitCode.Done or ExitCode.Ours, error);
    }

    private static Process Start(string[] args)
    {
        var start = new ProcessStartInfo("dotnet", [typeof(CommandLine).Assembly.Location, .. args])
        {
            UseShellExecute = false,
            RedirectStandardOutput = true,
            RedirectStandardError = true,
        };
        return Process.Start(start)!;
    }

    // Linux says which signals a process was born deaf to; they stay ignored in what it starts.
    private static bool IsIgnored(int number)
    {
        const string status = "/proc/self/status", key = "SigIgn:";
        var line = File.Exists(status) ? File.ReadLines(status).FirstOrDefault(text => text.StartsWith(key, StringComparison.Ordinal)) : null;
        return line is not null && (ulong.Parse(line.AsSpan(key.Length).Trim(), NumberStyles.HexNumber, CultureInfo.InvariantCulture) >> (number - 1) & 1) == 1;
    }
}
