using Linewright.Materials;

namespace Linewright.Brief;

/// <summary>Every field that a brief may have, in the order in which a person would write them.</summary>
/// <remarks>
/// Ranges are where the construction makes sense, not what is good practice: that is for the checks to say.
/// Stone ranges: common practice, wider than any graded cut. Wear and making ranges: common practice.
/// </remarks>
public static class BriefFields
{
    /// <summary>The groups, in order, each with a sentence for the designer.</summary>
    public static IReadOnlyList<(string Name, string Help)> Groups { get; } =
    [
        ("stone", "The stones of the line: all alike."),
        ("length", "How long the piece is: exactly one of laid_flat_mm, laid_flat_in or wrist_mm."),
        ("setting", "How the stone is held."),
        ("hinge", "How one link turns on the next."),
        ("link", "The link's own measures."),
        ("clasp", "The box clasp."),
        ("process", "How the metal is made."),
        ("wrist", "The form of the wrist that the piece is tried on."),
        ("finish", "What happens after polishing."),
    ];

    /// <summary>Every field, grouped in the order of <see cref="Groups"/>; the fields outside the groups come first.</summary>
    public static IReadOnlyList<BriefField> All { get; } =
    [
        new() { Path = "$schema", Kind = FieldKind.Text, LongestText = 2048, Help = "Where the schema of this file lies; for editors, otherwise ignored." },
        new() { Path = "name", Kind = FieldKind.Text, IsRequired = true, Help = "What the piece is called." },
        new() { Path = "metal", Kind = FieldKind.Choice, IsRequired = true, Choices = MaterialTables.Alloys.Keys, Example = "gold-750-yellow", Help = "The alloy: family, fineness, colour or alloying metal." },

        Choice("stone.cut", ["round"], "round", "The cut."),
        Choice("stone.species", MaterialTables.Species.Keys, "diamond", "The kind of stone, by the trade's name."),
        Number("stone.diameter_mm", 1.2, 8, "Mean girdle diameter.") with { IsRequired = true },
        Number("stone.table_percent", 50, 66, "Table width over the girdle diameter, corner to corner.", 57),
        Number("stone.crown_deg", 25, 40, "Slope of the crown mains.", 34.5),
        Number("stone.pavilion_deg", 38, 43, "Slope of the pavilion mains.", 40.75),
        Number("stone.star_percent", 40, 70, "How far the star facets reach from the table to the girdle.", 50),
        Number("stone.lower_half_percent", 65, 90, "How far the lower halves reach from the girdle to the culet.", 77),
        Number("stone.girdle_percent", 2, 6, "Girdle thickness at the mains over the diameter.", 3.5),
        Number("stone.girdle_facets", 32, 192, "Flats that the round girdle is drawn with.", 64) with { Step = 16 },
        Number("stone.culet_percent", 0, 2, "Culet over the pavilion's depth; 0 is a point.", 0),

        Number("length.laid_flat_mm", 100, 1524, "Closed, taut and laid flat, measured through the hinge axes with the clasp."),
        Number("length.laid_flat_in", 4, 60, "The same in inches of 25.4 mm."),
        Number("length.wrist_mm", 100, 300, "Girth of the wrist; the length is solved from it and the ease."),
        Number("length.ease_mm", 0, 60, "Room on the wrist: inside circumference less girth. Only with wrist_mm.", 12.7),

        Derived("setting.claw_mm", 0.4, 2, "Diameter of a claw, finished.", "0.20 x diameter + 0.22 below 2.8 mm, 0.15 x diameter + 0.36 from there, at least 0.55"),
        Number("setting.seat_fraction", 0.3, 0.5, "How deep the bearing is cut into the claw, as a part of the claw's diameter.", 0.4),
        Derived("setting.cover_mm", 0.1, 1, "How far a claw's tip lies over the crown, as set.", "the middle of the trade's table for the stone's diameter"),
        Derived("setting.tip_rise_mm", 0.2, 2, "How far a claw stands over the table, as cast, for the setter to bend.", "0.10 x diameter, at least 0.3"),
        Number("setting.culet_clearance_mm", 0.3, 2, "From the culet to the skin.", 0.4),

        Choice("hinge.kind", ["auto", "eye-over-bar", "pinned-knuckles"], "auto", "How the hinge is built; auto takes the eye over the bar where there is room."),
        Derived("hinge.bar_mm", 0.5, 2.5, "Diameter of the bar, or of the drawn pin."),
        Derived("hinge.eye_wall_mm", 0.4, 2, "Wall of the eye around its hole."),
        Derived("hinge.eye_width_mm", 0.5, 4, "Width of the eye along the bar."),
        Derived("hinge.cheek_mm", 0.4, 3, "Thickness of a cheek beside the eye."),
        Derived("hinge.diametral_clearance_mm", 0.04, 0.6, "Hole less bar, on the diameter.", "0.09 for an eye over its bar, 0.065 for a drawn pin"),
        Number("hinge.side_clearance_mm", 0.04, 0.4, "Between the eye and a cheek, a side.", 0.08),
        Number("hinge.relief_mm", 0.08, 0.5, "Around the eye's sweep where the neighbour makes way for it.", 0.12),
        Number("hinge.outward_stop_deg", 6, 20, "Where metal stops the line from bending backwards, pulled taut.", 14),

        Derived("link.stone_gap_mm", 0.05, 2, "Preferred gap between two girdles.", "0.30 + 0.05 x diameter"),
        Derived("link.stone_gap_min_mm", 0.04, 2, "Smallest gap that the layout may choose.", "0.8 x stone_gap_mm"),
        Derived("link.stone_gap_max_mm", 0.05, 3, "Largest gap that the layout may choose.", "1.45 x stone_gap_mm"),
        Derived("link.rail_mm", 0.5, 2.5, "Section of the rails."),
        Number("link.opening_percent", 50, 80, "Opening under the stone over its diameter.", 62),
        Number("link.edge_radius_mm", 0.05, 0.4, "Radius of outer edges.", 0.15),
        Number("link.fillet_mm", 0, 0.6, "Fillet in inside corners.", 0.20),

        Choice("clasp.kind", ["box"], "box", "The clasp."),
        Derived("clasp.length_min_mm", 3, 60, "Shortest clasp that the layout may choose: closed and taut, from the axis of the box's bar to the axis of the tongue's eye. Never under what the tongue needs.", "8 mm, or what the tongue needs to last in its metal and temper"),
        Derived("clasp.length_max_mm", 3, 60, "Longest clasp that the layout may choose, measured in the same way. At least what the tongue needs.", "16 mm; where no line closes so, 5.5 mm or a pitch over the shortest"),
        Derived("clasp.wall_mm", 0.6, 1.5, "Wall of the box, finished.", "0.8, or a twentieth of a millimetre over the least wall of the metal where that is more"),
        Derived("clasp.tongue_mm", 0.25, 0.6, "Thickness of the tongue's strip.", "0.35 to 0.45, so that the push takes 3.5 N"),
        Number("clasp.press_mm", 0.4, 0.9, "How far the tongue is pressed to release it.", 0.55),
        Number("clasp.side_play_mm", 0.05, 0.2, "Between the tongue and the box, a side.", 0.10),
        Number("clasp.width_ratio", 1, 1.8, "Width of the clasp over the width of the line.", 1.3),
        Choice("clasp.temper", ["hard", "annealed"], "hard", "State of the tongue: a hard one springs, an annealed one takes a set."),
        new() { Path = "clasp.safety", Kind = FieldKind.Flag, DefaultFlag = true, Help = "A figure-of-eight wire at the side as a second lock." },

        Choice("process.route", MaterialTables.Routes.Keys, "printed-resin", "The steps from drawing to finished part: pattern, mould where there is one, casting, finishing."),
        Derived("process.shrink_percent", 0, 8, "Linear shrinkage from pattern to metal, over all steps.", "by the metal's family: gold 0.6, silver 1.25, platinum 1.75, palladium 1.5, brass and bronze 1; a mould's on top"),
        Derived("process.finish_loss_mm", 0, 0.25, "What tumbling and polishing take from a face.", "0.10 by the route's finishing steps"),
        Derived("process.tolerance_mm", 0.005, 0.2, "One standard deviation of a hole, bar or width as cast, of each on its own.", "by the route: 0.05 for printed resin"),
        Derived("process.scale_spread_percent", 0, 2, "One standard deviation of a tree's scale, in which all its parts share.", "by the route: 0.11 for printed resin, 0.42 with a rubber mould"),
        Derived("process.common_spread_um", 0, 50, "One standard deviation of where all faces of a tree come to lie together, outwards or inwards.", "by the route: 5 for printed resin"),
        Derived("process.finish_spread_um", 0, 100, "One standard deviation of what finishing takes from a face.", "21 by the route's finishing steps"),
        Derived("process.fit_spread_um", 0, 100, "One standard deviation of a joint's clearance on the diameter as the bench leaves it.", "22 for an eye closed over its bar, 14 for a wire in reamed holes"),
        Number("process.wall_reserve_mm", 0, 0.4, "How much over its least every wall is drawn, so that castings that come out thin still keep it. Claws, and sizes that the brief gives, stay as they are; the clasp's wall is never under it.", 0),
        // Half of 0.26, the tolerance of casting grade DCTG 4 up to 10 mm. Source read as excerpt: ISO 8062-3:2007, table 2.
        Number("process.wall_shortfall_mm", 0, 0.4, "How far a finished wall may come out under the least one for drawings before the casting is refused: half of the tolerance of casting grade DCTG 4.", 0.13),
        Number("process.mesh_deviation_um", 2, 50, "How far a mesh may lie from the true surface.", 5),
        Derived("process.sprue_mm", 0.8, 5, "Diameter of a sprue.", "1.25 x the thickest section that it feeds, by its modulus, at least 1.5"),
        Number("process.sprue_length_mm", 3, 20, "Length of a sprue from the part to the stem.", 6),
        Derived("process.stem_mm", 2, 12, "Diameter of the tree's stem.", "by the thickest sprue's modulus, at least 4"),
        Number("process.parts_per_tree", 1, 200, "Most parts on one tree.", 60) with { Step = 1 },
        Number("process.plate_x_mm", 20, 500, "Width of the printer's plate.", 110),
        Number("process.plate_y_mm", 20, 500, "Depth of the printer's plate.", 60),
        Number("process.plate_z_mm", 20, 500, "Height that the printer builds.", 100),
        Number("process.plate_gap_mm", 0.3, 10, "Least gap between two parts on a plate and on a tree.", 0.8),

        Number("wrist.depth_ratio", 0.5, 1, "Depth of the wrist over its breadth.", 0.75),
        Number("wrist.exponent", 2, 4, "Exponent of the superellipse: 2 is an ellipse, more is squarer.", 2.3),

        Number("finish.rhodium_um", 0, 1.5, "Thickness of rhodium plate; 0 is none.", 0),
    ];

    private static readonly Dictionary<string, BriefField> ByPath = All.ToDictionary(field => field.Path, StringComparer.Ordinal);

    /// <summary>The field at a path, null where there is none.</summary>
    public static BriefField? At(string path) => ByPath.GetValueOrDefault(path);

    /// <summary>The fields of a group; the empty group has the fields outside the groups.</summary>
    public static IEnumerable<BriefField> In(string group) => All.Where(field => field.Group == group);

    private static BriefField Number(string path, double low, double high, string help, double? standard = null) => new()
    {
        Path = path,
        Kind = FieldKind.Number,
        Unit = UnitOf(path),
        Low = low,
        High = high,
        DefaultNumber = standard,
        Help = help,
    };

    private static BriefField Derived(string path, double low, double high, string help, string rule = "derived from the stone and the pitch")
        => Number(path, low, high, help) with { DefaultRule = rule };

    private static BriefField Choice(string path, IReadOnlyList<string> words, string standard, string help)
        => new() { Path = path, Kind = FieldKind.Choice, Choices = words, DefaultChoice = standard, Help = help };

    private static string UnitOf(string path) => path[(path.LastIndexOf('_') + 1)..] switch
    {
        "mm" => "mm",
        "in" => "in",
        "um" => "um",
        "deg" => "deg",
        "percent" => "%",
        _ => "",
    };
}
