using Linewright.Brief;
using Linewright.Materials;

namespace Linewright.Studio.Wire;

/// <summary>The brief's fields as the page's controls need them, in the order in which a jeweller thinks.</summary>
public static class FieldTable
{
    // Which groups of the brief stand under which heading.
    private static readonly (string Section, string[] Groups)[] Sections =
    [
        ("Stone", ["stone"]),
        ("Setting", ["setting"]),
        ("Line", ["length", "link", "hinge", "wrist"]),
        ("Metal", ["metal", "finish"]),
        ("Clasp", ["clasp"]),
        ("Process", ["process"]),
    ];

    /// <summary>Sections, their fields, and the names of alloys and species.</summary>
    public static object Build() => new
    {
        sections = Sections.Select(section => new
        {
            name = section.Section,
            groups = section.Groups.Select(group => new
            {
                name = group,
                help = group == "length" ? "How long the piece is: laid flat, or by the wrist with its ease." : BriefFields.Groups.FirstOrDefault(known => known.Name == group).Help ?? "The alloy.",
                fields = (group == "metal" ? [BriefFields.At("metal")!] : BriefFields.In(group)).Select(Field).ToList(),
            }).ToList(),
        }).ToList(),
        name = Field(BriefFields.At("name")!),
        alloys = MaterialTables.Alloys.All.Select(alloy => new
        {
            key = alloy.Key,
            name = alloy.Name,
            family = alloy.Family.ToString(),
            colour = new[] { alloy.Colour.Red, alloy.Colour.Green, alloy.Colour.Blue },
            density = alloy.DensityGPerCm3,
            alloy.Note,
        }).ToList(),
        species = MaterialTables.Species.All.Select(species => new { key = species.Key, name = species.Name, species.Care, species.Disclosure }).ToList(),
    };

    private static object Field(BriefField field) => new
    {
        path = field.Path,
        group = field.Group,
        label = Label(field),
        kind = field.Kind.ToString().ToLowerInvariant(),
        unit = field.Unit == "um" ? "µm" : field.Unit == "deg" ? "°" : field.Unit,
        low = field.Low,
        high = field.High,
        step = field.Step,
        choices = field.Choices,
        @default = field.DefaultNumber ?? (object?)field.DefaultChoice ?? field.DefaultFlag,
        defaultRule = field.DefaultRule,
        required = field.IsRequired,
        help = Spoken(field, field.Help),
    };

    // Where a brief's text names another field of the group, the page has a control with a label.
    private static string Spoken(BriefField field, string text) => BriefFields.In(field.Group)
        .Where(other => other.Name.Contains('_', StringComparison.Ordinal))
        .Aggregate(text, (said, other) => said.Replace(other.Name, Label(other).ToLowerInvariant(), StringComparison.Ordinal));

    // "stone.lower_half_percent" reads as "Lower half".
    private static string Label(BriefField field)
    {
        var words = field.Name.Split('_').ToList();
        if (words.Count > 1 && words[^1] is "mm" or "in" or "um" or "deg" or "percent")
        {
            words.RemoveAt(words.Count - 1);
        }

        var label = string.Join(' ', words);
        label = field.Path switch
        {
            "length.laid_flat_in" => "laid flat, inches",
            "length.wrist_mm" => "wrist girth",
            "metal" => "alloy",
            "link.stone_gap_mm" => "gap between stones",
            "link.stone_gap_min_mm" => "smallest gap",
            "link.stone_gap_max_mm" => "largest gap",
            "link.rail_mm" => "rail section",
            "clasp.tongue_mm" => "tongue strip",
            "clasp.length_min_mm" => "shortest length",
            "clasp.length_max_mm" => "longest length",
            "setting.claw_mm" => "claw diameter",
            "setting.cover_mm" => "claw cover",
            "process.mesh_deviation_um" => "deviation of files",
            "process.tolerance_mm" => "spread of sizes",
            "process.scale_spread_percent" => "spread of a tree's scale",
            "process.common_spread_um" => "spread of a tree's faces",
            "process.finish_spread_um" => "spread of the finish",
            "process.fit_spread_um" => "spread of the joints' fit",
            "process.sprue_mm" => "sprue diameter",
            "process.stem_mm" => "stem diameter",
            "process.plate_x_mm" => "plate width",
            "process.plate_y_mm" => "plate depth",
            "process.plate_z_mm" => "plate height",
            "process.plate_gap_mm" => "gap on plate and tree",
            _ => label,
        };
        return char.ToUpperInvariant(label[0]) + label[1..];
    }
}
