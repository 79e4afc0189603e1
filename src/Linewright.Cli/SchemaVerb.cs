using System.CommandLine;
using Linewright.Brief;
using Linewright.Quote;

namespace Linewright.Cli;

/// <summary>schema: what a brief or a price list may say, as a JSON Schema for editors.</summary>
internal static class SchemaVerb
{
    public static Command Create(Desk desk)
    {
        var verb = new Command("schema", "Prints the JSON Schema of a brief, or of a price list.");
        var prices = new Option<bool>("--prices") { Description = "That of a price list." };
        verb.Options.Add(prices);
        verb.SetAction(parse =>
        {
            if (parse.GetValue(prices))
            {
                PriceSchema.Write(desk.Out);
            }
            else
            {
                BriefSchema.Write(desk.Out);
            }

            desk.Out.Flush();
            return ExitCode.Done;
        });
        return verb;
    }
}
