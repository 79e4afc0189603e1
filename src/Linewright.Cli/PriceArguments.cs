using System.CommandLine;
using Linewright.Quote;

namespace Linewright.Cli;

/// <summary>What quote and make have in common: --prices and --grade.</summary>
internal sealed class PriceArguments(bool isRequired)
{
    /// <summary>The price list.</summary>
    public Option<string> Prices { get; } = new("--prices")
    {
        Description = "The shop's price list, a JSON file.",
        HelpName = "FILE",
        Required = isRequired,
    };

    /// <summary>The stones' grade.</summary>
    public Option<string?> Grade { get; } = new("--grade")
    {
        Description = "The stones' grade as the price list spells it; needed where it has more than one.",
        HelpName = "TEXT",
    };

    /// <summary>Adds both to a verb.</summary>
    public void AddTo(Command verb)
    {
        verb.Options.Add(Prices);
        verb.Options.Add(Grade);
    }

    /// <summary>Reads the price list; null where none was named.</summary>
    /// <exception cref="RefusalException">It cannot be read or has faults.</exception>
    public PriceList? Read(ParseResult parse)
    {
        if (parse.GetValue(Prices) is not { } path)
        {
            return null;
        }

        using var file = NamedFile.Open(path, "a price list");
        var result = PriceListReader.Read(file, path);
        return result.List ?? throw new RefusalException(ExitCode.Asked, string.Join('\n', result.Messages));
    }

    /// <summary>Ends the verb where prices are missing, and names every one of them.</summary>
    /// <exception cref="RefusalException">A price is missing.</exception>
    public void Demand(ParseResult parse, PieceQuote quote)
    {
        if (quote.Missing.Count > 0)
        {
            var path = parse.GetValue(Prices);
            throw new RefusalException(ExitCode.Asked, string.Join('\n', quote.Missing.Select(missing => $"{path}: {missing.Path}: nothing there, expected {missing.Needed}")));
        }
    }
}
