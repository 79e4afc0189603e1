using System.Text;
using ArchUnitNET.Domain;
using ArchUnitNET.Fluent.Slices;
using ArchUnitNET.Loader;
using ArchUnitNET.xUnitV3;
using Linewright.Brief;
using Linewright.Casting;
using Linewright.Checks;
using Linewright.Delivery;
using Linewright.Files;
using Linewright.Making;
using Linewright.Materials;
using Linewright.Paper;
using Linewright.Parts;
using Linewright.Pictures.Gpu;
using Linewright.Pictures.Transport;
using Linewright.Quote;
using Linewright.Solids.Meshing;
using Linewright.Solids.Polyhedra;
using Linewright.Solids.Space;
using Linewright.Staging;
using Linewright.Studio.Serving;
using Linewright.Tolerance;
using Type = System.Type;

namespace Linewright.Tests;

/// <summary>The house as docs/HOUSE.md draws it: projects, their rooms in order, and who may know whom.</summary>
/// <remarks>A new folder under src finds its place in <see cref="Order"/>, or these tests fail.</remarks>
public class RoomsTests
{
    /// <summary>Every project with its rooms; a room knows itself and the rooms before it, a project those that it names.</summary>
    private static readonly Project[] Order =
    [
        new("Linewright.Solids", [], ["Space", "Lanes", "Shapes", "Meshing", "Polyhedra", "Measures", "Outlines"]),
        new("Linewright.Paper", ["Linewright.Solids"], []),
        new("Linewright", ["Linewright.Solids", "Linewright.Paper"], ["Materials", "Brief", "Stones", "Layout", "Parts", "Assembly", "Checks", "Tolerance", "Casting", "Making", "Sheets", "Quote"]),
        new("Linewright.Files", ["Linewright.Solids", "Linewright.Paper"], []),
        new("Linewright.Delivery", ["Linewright", "Linewright.Files", "Linewright.Paper", "Linewright.Solids"], []),
        new("Linewright.Pictures", ["Linewright.Solids"], ["Spectra", "Images", "Denoising", "Scenes", "Rays", "Transport"]),
        new("Linewright.Pictures.Gpu", ["Linewright.Pictures"], []),
        new("Linewright.Staging", ["Linewright", "Linewright.Pictures", "Linewright.Solids"], []),
        new("Linewright.Studio", ["Linewright", "Linewright.Delivery", "Linewright.Files", "Linewright.Paper", "Linewright.Pictures", "Linewright.Staging", "Linewright.Solids"], ["Pieces", "Shelf", "Wire", "Serving"]),
        new("Linewright.Cli", ["Linewright", "Linewright.Delivery", "Linewright.Paper", "Linewright.Pictures", "Linewright.Pictures.Gpu", "Linewright.Staging", "Linewright.Studio", "Linewright.Solids"], []),
    ];

    /// <summary>What the command line may hold of the solids: places, meshes, and a stone's body to draw.</summary>
    private static readonly Type[] ValuesOfSolids =
        [typeof(Pose), typeof(Vec3), typeof(Bounds), typeof(Mesh), typeof(MeshOutcome), typeof(ConvexPolyhedron)];

    /// <summary>Static classes that the command line may call: the rooms' front doors and the writers.</summary>
    private static readonly Type[] FrontDoors =
    [
        typeof(BriefReader), typeof(BriefDefaults), typeof(BriefSchema), typeof(PartsBuilder), typeof(PieceChecks), typeof(Cautions),
        typeof(Workshop), typeof(Reports), typeof(ReportJson), typeof(PieceFiles), typeof(QuoteFiles),
        typeof(PriceListReader), typeof(PriceSchema), typeof(Quotes), typeof(QuoteGrids), typeof(QuoteJson), typeof(MaterialTables), typeof(SheetFiles), typeof(StudioServer),
        typeof(ToleranceStudy), typeof(WallReserves), typeof(CastingPlans), typeof(CastingFiles), typeof(PictureFile), typeof(PictureWords),
        typeof(UnprintedLetters), typeof(FileStem),
    ];

    /// <summary>The trade's words, which a library of solids has no use for.</summary>
    /// <remarks>Left out: words that mean something else among meshes and queues, such as push, catch and safety.</remarks>
    private static readonly HashSet<string> TradeWords = new(StringComparer.OrdinalIgnoreCase)
    {
        "stone", "gem", "jewel", "girdle", "pavilion", "culet", "claw", "prong", "hinge", "clasp", "tongue", "bracelet", "necklace",
        "wrist", "carat", "alloy", "gold", "diamond", "sprue",
    };

    /// <summary>Words that a type may not bear, though a method may: the link of a vertex is a term of topology.</summary>
    private static readonly HashSet<string> TradeThings = new(StringComparer.OrdinalIgnoreCase) { "link", "eye", "rail", "bearing", "bar" };

    private static readonly Architecture House = new ArchLoader().LoadAssemblies(
        typeof(Mesh).Assembly, typeof(Page).Assembly, typeof(Report).Assembly, typeof(StlWriter).Assembly, typeof(PieceFiles).Assembly, typeof(PathTracer).Assembly, typeof(GpuEngine).Assembly, typeof(Photographer).Assembly, typeof(StudioServer).Assembly, typeof(Linewright.Cli.CommandLine).Assembly).Build();

    private static readonly IType[] OurTypes = [.. House.Types.Where(type => ProjectOf(type) is not null)];

    [Fact]
    public void Every_folder_of_the_sources_has_its_place()
    {
        var source = Path.Combine(Repository.Root, "src");
        Assert.Equal(Order.Select(project => project.Name).Order(StringComparer.Ordinal), Folders(source));
        Assert.All(Order, project =>
        {
            var root = Path.Combine(source, project.Name);
            Assert.Equal(project.Rooms.Order(StringComparer.Ordinal), Folders(root));
            Assert.All(project.Rooms, room => Assert.Empty(Folders(Path.Combine(root, room))));
        });
    }

    [Fact]
    public void Every_type_lives_in_a_room_and_the_rooms_are_seen()
    {
        // Without this a test below could pass because it looked at nothing.
        Assert.All(Order, project =>
        {
            var seen = OurTypes.Where(type => ProjectOf(type) == project).Select(RoomOf).Distinct().ToList();
            Assert.Equal(project.Rooms.Length == 0 ? [""] : project.Rooms.Order(StringComparer.Ordinal), seen.Order(StringComparer.Ordinal));
        });
        Assert.Contains(Known(), pair => RoomOf(pair.From) == "Making" && RoomOf(pair.To) == "Measures");
    }

    [Fact]
    public void No_room_knows_a_later_one()
    {
        var slips = Known().Where(pair => ProjectOf(pair.From) == ProjectOf(pair.To)
            && Place(pair.From) < Place(pair.To));
        Nothing(Said(slips));
    }

    [Fact]
    public void No_rooms_know_each_other_in_a_circle()
    {
        SliceRuleDefinition.Slices().Matching("Linewright.Solids.(*)").Should().BeFreeOfCycles().Check(House);
        SliceRuleDefinition.Slices().Matching("Linewright.Studio.(*)").Should().BeFreeOfCycles().Check(House);
        SliceRuleDefinition.Slices().Matching("Linewright.(*)").Should().BeFreeOfCycles().Check(House);
    }

    [Fact]
    public void A_project_knows_only_those_that_it_names()
    {
        var slips = Known().Where(pair => ProjectOf(pair.From) != ProjectOf(pair.To)
            && !ProjectOf(pair.From)!.Knows.Contains(ProjectOf(pair.To)!.Name, StringComparer.Ordinal));
        Nothing(Said(slips));
    }

    [Fact]
    public void The_command_line_takes_only_values_from_the_solids()
    {
        var allowed = ValuesOfSolids.Select(type => type.FullName!).ToHashSet(StringComparer.Ordinal);
        var slips = Known().Where(pair => IsCli(pair.From) && ProjectOf(pair.To)!.Name == "Linewright.Solids" && !allowed.Contains(pair.To.FullName));
        Nothing(Said(slips));
    }

    [Fact]
    public void The_command_line_enters_by_the_front_doors()
    {
        var doors = FrontDoors.Select(type => type.FullName!).ToHashSet(StringComparer.Ordinal);
        var called = Known().Where(pair => IsCli(pair.From) && !IsCli(pair.To) && pair.To is Class { IsAbstract: true, IsSealed: true }).ToList();
        Nothing(Said(called.Where(pair => !doors.Contains(pair.To.FullName))));
        Nothing(doors.Except(called.Select(pair => pair.To.FullName), StringComparer.Ordinal).Select(door => $"{door} is listed as a front door, but nobody enters by it"));
    }

    [Fact]
    public void Only_the_verb_that_starts_it_knows_the_studio()
    {
        var knowing = Known().Where(pair => ProjectOf(pair.To)!.Name == "Linewright.Studio" && ProjectOf(pair.From)!.Name != "Linewright.Studio")
            .Select(pair => pair.From.Name.Split('+', '<')[0]).Distinct(StringComparer.Ordinal).ToList();
        Assert.Equal(["StudioVerb"], knowing);
    }

    [Fact]
    public void Solids_and_files_know_no_word_of_the_trade()
    {
        var types = OurTypes.Where(type => ProjectOf(type)!.Name is "Linewright.Solids" or "Linewright.Paper" or "Linewright.Files").ToList();
        var things = types.Where(type => Words(Plain(type.Name)).Any(TradeThings.Contains)).Select(type => type.FullName);
        var words = types
            .SelectMany(type => type.Members.Select(member => member.Name).Prepend(type.Name).Select(name => (type.FullName, Name: Plain(name))))
            .Where(named => Words(named.Name).Any(TradeWords.Contains))
            .Select(named => $"{named.FullName}: {named.Name}");
        Nothing(things.Concat(words).Distinct(StringComparer.Ordinal));
    }

    // A list of all slips, in full: an assertion on collections would cut them short.
    private static void Nothing(IEnumerable<string> slips)
    {
        var all = slips.ToList();
        Assert.True(all.Count == 0, string.Join('\n', all));
    }

    // Type parameters are told apart by their names only, so that two methods with a TEnum would seem to know each other.
    private static IEnumerable<(IType From, IType To)> Known()
        => OurTypes.SelectMany(type => type.Dependencies.Select(dependency => (From: type, To: dependency.Target)))
            .Where(pair => pair.To is not GenericParameter && ProjectOf(pair.To) is not null);

    private static Project? ProjectOf(IType type)
    {
        var space = type.Namespace?.FullName ?? "";

        // The longest name that fits: Linewright.Solids before Linewright.
        return Order.Where(project => space == project.Name || space.StartsWith(project.Name + ".", StringComparison.Ordinal))
            .MaxBy(project => project.Name.Length);
    }

    private static string RoomOf(IType type)
    {
        var below = type.Namespace.FullName[ProjectOf(type)!.Name.Length..].TrimStart('.');
        return below.Split('.')[0];
    }

    private static int Place(IType type) => Array.IndexOf(ProjectOf(type)!.Rooms, RoomOf(type));

    private static bool IsCli(IType type) => ProjectOf(type)!.Name == "Linewright.Cli";

    private static IEnumerable<string> Said(IEnumerable<(IType From, IType To)> pairs)
        => pairs.Select(pair => $"{pair.From.FullName} knows {pair.To.FullName}").Distinct(StringComparer.Ordinal);

    private static string[] Folders(string path)
        => [.. Directory.EnumerateDirectories(path).Select(folder => Path.GetFileName(folder)).Where(name => name is not ("bin" or "obj" or "web" or "fonts")).Order(StringComparer.Ordinal)];

    // A method's name comes with its parameters' types in brackets.
    private static string Plain(string name) => name.Split('(')[0].Split('`')[0];

    // "CuletHeightMm" reads as culet, height, mm.
    private static IEnumerable<string> Words(string name)
    {
        var word = new StringBuilder();
        foreach (var letter in name)
        {
            if (word.Length > 0 && (char.IsUpper(letter) || !char.IsLetter(letter)))
            {
                yield return word.ToString();
                word.Clear();
            }

            if (char.IsLetter(letter))
            {
                word.Append(letter);
            }
        }

        if (word.Length > 0)
        {
            yield return word.ToString();
        }
    }

    private sealed record Project(string Name, string[] Knows, string[] Rooms);
}
