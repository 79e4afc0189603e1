using System.Globalization;
using System.Text;
using Linewright.Brief;
using Linewright.Paper;
using Linewright.Quote;

namespace Linewright.Cli;

/// <summary>What a verb works at: streams in and out, what is known of the terminal, and the workbench.</summary>
/// <remarks>Tests put their own streams here; nothing else in this project touches the console.</remarks>
internal sealed class Desk
{
    private const int PlainWidth = 80;
    private const int NarrowestWidth = 40;

    /// <summary>Where a brief named - is read from.</summary>
    public required Stream In { get; init; }

    /// <summary>Answers: tables, or JSON as plain UTF-8 without a mark.</summary>
    public required Stream Out { get; init => field = AnswerStream.Around(value); }

    /// <summary>Messages and progress.</summary>
    public required TextWriter Error { get; init => field = MessageWriter.Around(value); }

    /// <summary>True where a person sees the answers, in colour.</summary>
    public bool HasColour { get; init; }

    /// <summary>True where a person sees progress.</summary>
    public bool ShowsProgress { get; init; }

    /// <summary>Columns of a table.</summary>
    public int Width { get; init; } = PlainWidth;

    /// <summary>True where our own faults are to be shown with their trace.</summary>
    public bool ShowsTrace { get; init; }

    /// <summary>Who does the work.</summary>
    public IWorkbench Workbench { get; init; } = new Workbench();

    /// <summary>The desk at the console that the program was started from.</summary>
    public static Desk OfTheConsole()
    {
        var plain = new UTF8Encoding(encoderShouldEmitUTF8Identifier: false);
        if (OperatingSystem.IsWindows() && !Console.IsOutputRedirected)
        {
            Console.OutputEncoding = plain;
        }

        // Convention: a NO_COLOR that is not empty asks for no colour.
        var isPlain = !string.IsNullOrEmpty(Environment.GetEnvironmentVariable("NO_COLOR")) || Environment.GetEnvironmentVariable("TERM") == "dumb";
        return new Desk
        {
            In = Console.OpenStandardInput(),
            Out = Console.OpenStandardOutput(),
            Error = new StreamWriter(Console.OpenStandardError(), plain) { AutoFlush = true },
            HasColour = !isPlain && !Console.IsOutputRedirected,
            ShowsProgress = !Console.IsErrorRedirected && Environment.GetEnvironmentVariable("TERM") != "dumb",
            Width = ConsoleWidth(),
            ShowsTrace = Environment.GetEnvironmentVariable("LINEWRIGHT_TRACE") == "1",
        };
    }

    /// <summary>Says which letters of a piece's name its papers cannot show.</summary>
    public void TellUnprinted(ResolvedBrief brief) => Tell(UnprintedLetters.Sentence("the piece's name", brief.Name) is { } sentence ? [sentence] : []);

    /// <summary>Says which letters the client's page cannot show.</summary>
    public void TellUnprinted(PieceQuote quote) => Tell(quote.Unprinted());

    private void Tell(IReadOnlyList<string> sentences)
    {
        foreach (var sentence in sentences)
        {
            Error.WriteLine(sentence);
        }
    }

    private static int ConsoleWidth()
    {
        if (int.TryParse(Environment.GetEnvironmentVariable("COLUMNS"), NumberStyles.None, CultureInfo.InvariantCulture, out var columns))
        {
            return Math.Clamp(columns, NarrowestWidth, 400);
        }

        try
        {
            return Console.IsOutputRedirected ? PlainWidth : Math.Max(NarrowestWidth, Console.WindowWidth);
        }
        catch (IOException)
        {
            return PlainWidth;
        }
    }
}
