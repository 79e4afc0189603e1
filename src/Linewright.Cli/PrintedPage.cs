using System.Globalization;
using System.Text;
using Spectre.Console;

namespace Linewright.Cli;

/// <summary>A page of tables for a person, set to the width of the terminal and put on the desk when it is done.</summary>
internal sealed class PrintedPage : IDisposable
{
    private readonly StringWriter page = new(CultureInfo.InvariantCulture) { NewLine = "\n" };
    private readonly Desk desk;

    public PrintedPage(Desk desk)
    {
        this.desk = desk;
        Console = AnsiConsole.Create(new AnsiConsoleSettings
        {
            Ansi = desk.HasColour ? AnsiSupport.Yes : AnsiSupport.No,
            ColorSystem = desk.HasColour ? ColorSystemSupport.Standard : ColorSystemSupport.NoColors,
            Interactive = InteractionSupport.No,
            Out = new AnsiConsoleOutput(page),
        });
        Console.Profile.Width = desk.Width;
        Console.Profile.Capabilities.Unicode = true;
    }

    /// <summary>Where tables are drawn.</summary>
    public IAnsiConsole Console { get; }

    /// <summary>One line with markup.</summary>
    public void Line(FormattableString markup) => Console.MarkupLine(markup.ToString(CultureInfo.InvariantCulture));

    /// <summary>Puts the page on the desk, without the spaces that tables leave at the ends of lines.</summary>
    public void Dispose()
    {
        using var writer = new StreamWriter(desk.Out, new UTF8Encoding(false), leaveOpen: true) { NewLine = "\n" };
        foreach (var line in page.ToString().TrimEnd('\n').Split('\n'))
        {
            writer.WriteLine(line.TrimEnd());
        }

        page.Dispose();
    }
}
