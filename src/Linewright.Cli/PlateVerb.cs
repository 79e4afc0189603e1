using System.CommandLine;

namespace Linewright.Cli;

/// <summary>plate: sprues the cast parts and writes the printer's plates and the table of the trees into a folder.</summary>
internal static class PlateVerb
{
    public static Command Create(Desk desk) => FolderVerb.Create(
        "plate",
        "Sprues the cast parts, nests them on the printer's plate and on the tree, and writes both.",
        desk,
        _ => desk.Workbench.Plate,
        (tables, report) =>
        {
            tables.Summary(report);
            tables.Casting(report);
        });
}
