using System.CommandLine;
using Linewright.Brief;

namespace Linewright.Cli;

/// <summary>schema: what a brief may say, as a JSON Schema for editors.</summary>
internal static class SchemaVerb
{
    public static Command Create(Desk desk)
    {
        var verb = new Command("schema", "Prints the JSON Schema of a brief.");
        verb.SetAction(_ =>
        {
            BriefSchema.Write(desk.Out);
            desk.Out.Flush();
            return ExitCode.Done;
        });
        return verb;
    }
}
