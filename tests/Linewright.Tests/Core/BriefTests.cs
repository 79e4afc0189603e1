using System.Globalization;
using System.Text;
using System.Text.Json;
using System.Text.Json.Nodes;
using CsCheck;
using Linewright.Brief;
using Linewright.Materials;

namespace Linewright.Tests.Core;

public class BriefTests
{
    private const string Shortest = """
        {
          "name": "Harbour lights",
          "stone": { "cut": "round", "species": "diamond", "diameter_mm": 3.0 },
          "metal": "gold-750-white-pd",
          "length": { "laid_flat_mm": 178.0 }
        }
        """;

    // What is wrong, and the whole message that answers it.
    public static TheoryData<string, string> Faulty => new()
    {
        { Shortest.Replace("3.0", "12"), "b.json:3:67: stone.diameter_mm: read 12, expected a number from 1.2 to 8 mm; 8 is the nearest that works" },
        { Shortest.Replace("3.0", "1e9"), "b.json:3:67: stone.diameter_mm: read 1e9, expected a number from 1.2 to 8 mm; 8 is the nearest that works" },
        { Shortest.Replace("3.0", "-1e999"), "b.json:3:67: stone.diameter_mm: read -1e999, expected a number from 1.2 to 8 mm; 1.2 is the nearest that works" },
        { Shortest.Replace("3.0", "\"3\""), "b.json:3:67: stone.diameter_mm: read \"3\", expected a number from 1.2 to 8 mm; write a plain number without quotes or unit" },
        { Shortest.Replace("3.0", "null"), "b.json:3:67: stone.diameter_mm: read null, expected a number from 1.2 to 8 mm; write a plain number without quotes or unit" },
        { Shortest.Replace("3.0", "[3]"), "b.json:3:67: stone.diameter_mm: read a list in brackets, expected a number from 1.2 to 8 mm; write a plain number without quotes or unit" },
        { Shortest.Replace("3.0", "NaN"), "b.json:3:67: read NaN, expected a number; NaN and Infinity are no measures; write a plain number" },
        { Shortest.Replace("3.0", "-Infinity"), "b.json:3:68: read Infinity, expected a number; NaN and Infinity are no measures; write a plain number" },
        { Shortest.Replace("3.0", "3,5"), "b.json:3:69: read '5', expected a number in JSON's way; write 3.5, not 03.5 or 3,5" },
        { Shortest.Replace("3.0", ".5"), "b.json:3:67: read '.', expected a number; begin a number with a digit or -" },
        { Shortest.Replace("\"diameter_mm\"", "\"diametre_mm\""), "b.json:3:52: stone.diametre_mm: read an unknown field \"diametre_mm\", expected a field of stone; did you mean \"diameter_mm\"?" },
        { Shortest.Replace("\"diameter_mm\"", "\"diametre\""), "b.json:3:52: stone.diametre: read an unknown field \"diametre\", expected a field of stone; did you mean \"diameter_mm\"?" },
        { Shortest.Replace("3.0", "1e999"), "b.json:3:67: stone.diameter_mm: read 1e999, expected a number from 1.2 to 8 mm; 8 is the nearest that works" },
        { Shortest.Replace("\"name\"", "\"diameter_mm\": 3, \"name\""), "b.json:2:3: diameter_mm: read an unknown field \"diameter_mm\", expected a field of the brief; diameter_mm belongs into the group stone" },
        { Shortest.Replace("\"cut\"", "\"table_percent\": 57, \"table_percent\": 58, \"cut\""), "b.json:3:35: stone.table_percent: read \"table_percent\" a second time, expected every field once; remove one of the two" },
        { Shortest.Replace("round", "rund"), "b.json:3:21: stone.cut: read \"rund\", expected one of round; did you mean \"round\"?" },
        { Shortest.Replace("\"round\"", "7"), "b.json:3:21: stone.cut: read 7, expected one of round; write a word in quotes, such as \"round\"" },
        { Shortest.Replace("white-pd", "white-pt"), "b.json:4:12: metal: read \"gold-750-white-pt\", expected one of 30 names, such as gold-750-yellow; did you mean \"gold-750-white-pd\"?" },
        { Shortest.Replace("Harbour lights", ""), "b.json:2:11: name: read \"\", expected text of 1 to 80 characters; write a short text in quotes, without control characters" },
        { Shortest.Replace("Harbour lights", "\\ud800"), "b.json:2:11: name: read \"\uFFFD\", expected text of 1 to 80 characters; write a short text in quotes, without control characters" },
        { Shortest.Replace("Harbour lights", "bell\\u0007"), "b.json:2:11: name: read \"bell?\", expected text of 1 to 80 characters; write a short text in quotes, without control characters" },
        { Shortest.Replace("  \"metal\": \"gold-750-white-pd\",\n", ""), "b.json:1:1: metal: read nothing, expected one of 30 names, such as gold-750-yellow; add \"metal\": \"gold-750-yellow\"" },
        { Shortest.Replace(", \"diameter_mm\": 3.0", ""), "b.json:3:12: stone.diameter_mm: read nothing, expected a number from 1.2 to 8 mm; add \"diameter_mm\": 3" },
        { Shortest.Replace("\"laid_flat_mm\": 178.0", ""), "b.json:5:13: length: read no length, expected one of laid_flat_mm, laid_flat_in or wrist_mm; add \"length\": { \"laid_flat_mm\": 178 }" },
        { Shortest.Replace("178.0", "178.0, \"wrist_mm\": 160"), "b.json:5:50: length.wrist_mm: read wrist_mm beside laid_flat_mm, expected exactly one form of length; remove one of the two" },
        { Shortest.Replace("178.0", "178.0, \"ease_mm\": 9"), "b.json:5:49: length.ease_mm: read ease_mm without wrist_mm, expected ease_mm only beside wrist_mm; remove ease_mm, or give the length as wrist_mm" },
        { Shortest.Replace("{ \"laid_flat_mm\": 178.0 }", "178"), "b.json:5:13: length: read 178, expected a group in braces; write { ... } with fields such as laid_flat_mm, laid_flat_in, wrist_mm, or leave the group out" },
        { Shortest.Replace("\"name\"", "\"link\": { \"stone_gap_mm\": 0.5, \"stone_gap_max_mm\": 0.4 }, \"name\""), "b.json:2:54: link.stone_gap_max_mm: read 0.4, expected at least stone_gap_mm, 0.5 mm; raise it, or lower stone_gap_mm" },
        { Shortest.Replace("\"name\"", "\"link\": { \"stone_gap_min_mm\": 0.9 }, \"name\""), "b.json:2:33: link.stone_gap_min_mm: read 0.9, expected at most stone_gap_mm, 0.45 mm; lower it, or raise stone_gap_mm" },
        { Shortest.Replace("\"name\"", "\"clasp\": { \"length_min_mm\": 12, \"length_max_mm\": 9 }, \"name\""), "b.json:2:52: clasp.length_max_mm: read 9, expected at least length_min_mm, 12 mm; raise the one or lower the other" },
        { Shortest.Replace("\"name\"", "\"clasp\": { \"safety\": \"yes\" }, \"name\""), "b.json:2:24: clasp.safety: read \"yes\", expected true or false; write true or false without quotes" },
        { Shortest.Replace("\"cut\"", "\"girdle_facets\": 60, \"cut\""), "b.json:3:31: stone.girdle_facets: read 60, expected a whole multiple of 16 from 32 to 192; 64 is the nearest that works, or leave it out for 64" },
        { Shortest.Replace("\"cut\"", "\"crown_deg\": null, \"cut\""), "b.json:3:27: stone.crown_deg: read null, expected a number from 25 to 40 deg; leave the field out for its default" },
        { Shortest.Replace("{\n  \"name\"", "{\n  // ours\n  \"name\""), "b.json:2:3: read a comment, expected plain JSON, which has none; remove the comment" },
        { Shortest.Replace("178.0 }", "178.0, }"), "b.json:5:38: read a comma before }, expected another field; remove the comma before it" },
        { Shortest.Replace("\"round\"", "'round'"), "b.json:3:21: read a single quote, expected JSON, which quotes with \"; write \" instead" },
        { Shortest.Replace("lights\",", "lights\""), "b.json:3:3: read a text in quotes, expected a comma, a colon or a closing brace before it; a comma may be missing at the end of the line above" },
        { Shortest.Replace("lights\",", "lights,"), "b.json:2:27: read the end of the line, expected the rest of a text in quotes; close the \" on the same line" },
        { Shortest[..^1], "b.json:6:1: read the end of the file, expected the rest of the brief; close every \" and every { that was opened" },
        { Shortest + "{}", "b.json:6:2: read '{', expected JSON; look for a missing quote, comma, colon or brace just before" },
        { "[]", "b.json:1:1: read a list in brackets, expected an object with the fields of a brief; begin with { \"name\": \"...\" }" },
        { "", "b.json:1:1: read an empty file, expected a brief as JSON in UTF-8; begin with { \"name\": \"...\" }" },
        { "{\"name\":" + new string('[', 100), "b.json:1:9: name: read a list in brackets, expected text of 1 to 80 characters; write a short text in quotes, without control characters\nb.json:1:40: read braces or brackets nested more than 32 deep, expected groups of plain fields; a brief is two levels deep" },
    };

    public static TheoryData<string> Examples => ["harbour-lights", "tide-table", "lamplighter", "first-frost"];

    [Theory]
    [MemberData(nameof(Faulty))]
    public void A_fault_says_where_what_and_what_would_work(string text, string message)
    {
        var result = Read(text);
        Assert.Null(result.Brief);
        Assert.Equal(message, string.Join('\n', result.Messages));
    }

    [Fact]
    public void The_shortest_brief_gets_every_default()
    {
        var brief = Resolve(Shortest);
        Assert.Equal("Harbour lights", brief.Name);
        Assert.Equal(new StoneBrief(StoneCut.Round, "diamond", 3, 57, 34.5, 40.75, 50, 77, 3.5, 64, 0), brief.Stone);
        Assert.Equal(new LengthBrief(178, null, null), brief.Length);
        Assert.Equal(0.81, brief.Setting.ClawMm, 1e-12); // Common practice: 0.15 d + 0.36
        Assert.Equal(0.265, brief.Setting.CoverMm, 1e-12); // Common practice: between the rows 2.5-2.9 and 3.0-3.4
        Assert.Equal(0.3, brief.Setting.TipRiseMm, 1e-12);
        Assert.Equal(0.45, brief.Link.StoneGapMm, 1e-12); // Assumed: 0.30 + 0.05 d
        Assert.Equal((0.36, 0.6525), (Math.Round(brief.Link.StoneGapMinMm, 9), Math.Round(brief.Link.StoneGapMaxMm, 9)));
        Assert.Equal(0.6, brief.Process.ShrinkPercent); // Common practice: gold
        Assert.Equal(new HingeBrief(HingeKind.Auto, null, null, null, null, null, 0.08, 0.12, 14), brief.Hinge);
        Assert.Equal(new ClaspBrief(ClaspKind.Box, null, null, 0.8, null, 0.55, 0.10, 1.3, Temper.Hard, true), brief.Clasp);
        Assert.Equal("gold-750-white-pd", brief.Alloy.Key);
        Assert.Equal("diamond", brief.Species.Key);
    }

    [Theory]
    [InlineData(2.0, 0.62)] // Common practice: the table's 0.65 to 0.75 begins at 2.0; the fit gives 0.62
    [InlineData(2.8, 0.78)]
    [InlineData(4.0, 0.96)] // Source: the worked link of 4.0 mm
    [InlineData(1.2, 0.55)] // never under 0.55
    [InlineData(6.0, 1.20)] // Common practice: 1.00 to 1.20 up to 6.4, 1.15 to 1.40 from 6.5 to 8
    [InlineData(8.0, 1.36)]
    public void A_claw_grows_with_its_stone(double stone, double claw)
        => Assert.Equal(claw, BriefDefaults.ClawMm(stone), 1e-9);

    [Fact]
    public void A_claw_covers_more_of_a_larger_stone()
        => Gen.Select(Gen.Double[1.2, 8], Gen.Double[0, 1]).Sample((d, more)
            => BriefDefaults.CoverMm(d + more) >= BriefDefaults.CoverMm(d) && BriefDefaults.CoverMm(d) is >= 0.175 and <= 0.62);

    [Fact]
    public void A_wrist_brings_its_ease()
        => Assert.Equal(new LengthBrief(null, 160, 12.7), Resolve(Shortest.Replace("\"laid_flat_mm\": 178.0", "\"wrist_mm\": 160")).Length);

    [Fact]
    public void All_faults_come_in_one_pass_in_the_order_of_the_file()
    {
        var faults = Read(Shortest.Replace("3.0", "12").Replace("round", "square").Replace("178.0", "1")).Faults;
        Assert.Equal(["stone.cut", "stone.diameter_mm", "length.laid_flat_mm"], faults.Select(fault => fault.Path));
    }

    [Fact]
    public void Columns_count_characters_and_not_bytes()
        => Assert.Equal((1, 25), Read("""{"name":"Müñché", "metal":7}""").Faults.Where(fault => fault.Path == "metal").Select(fault => (fault.Line!.Value, fault.Column!.Value - 2)).Single());

    [Fact]
    public void A_byte_order_mark_is_passed_over()
    {
        var result = BriefReader.Read((byte[])[0xEF, 0xBB, 0xBF, .. Encoding.UTF8.GetBytes(Shortest)], "b.json");
        Assert.NotNull(result.Brief);
        var faulty = BriefReader.Read((byte[])[0xEF, 0xBB, 0xBF, .. "7"u8], "b.json");
        Assert.Equal((1, 1), (faulty.Faults[0].Line, faulty.Faults[0].Column));
    }

    [Fact]
    public void Other_encodings_are_named()
    {
        Assert.Equal(
            ["b.json:1:1: read UTF-16 text, expected a brief as JSON in UTF-8; save the file as UTF-8"],
            BriefReader.Read((byte[])[0xFF, 0xFE, .. Encoding.Unicode.GetBytes(Shortest)], "b.json").Messages);
        Assert.Equal(
            ["b.json:1:11: read bytes that are not UTF-8, expected a brief as JSON in UTF-8; save the file as UTF-8"],
            BriefReader.Read((byte[])[.. "{\"name\":\"M"u8, 0xFC, .. "ller\"}"u8], "b.json").Messages);
    }

    [Fact]
    public void A_huge_file_is_refused_without_being_read()
    {
        using var huge = new CountedStream(100L << 20);
        var result = BriefReader.Read(huge, "b.json");
        Assert.Equal(["b.json: read more than 1 MiB, expected a brief of at most 1 MiB; a brief is a page of JSON; check that this is the right file"], result.Messages);
        Assert.InRange(huge.Given, 1, BriefReader.LargestBytes + 1);
    }

    [Theory]
    [InlineData("stone.diameter_mm=3.5", null)]
    [InlineData("stone.diameter_mm=12", "--set stone.diameter_mm: read 12, expected a number from 1.2 to 8 mm; 8 is the nearest that works")]
    [InlineData("stone.diameter_mm=3,5", "--set stone.diameter_mm: read 3,5, expected a number from 1.2 to 8 mm; write a plain number without quotes or unit")]
    [InlineData("stone.diameter_mm=NaN", "--set stone.diameter_mm: read NaN, expected a number from 1.2 to 8 mm; 1.2 is the nearest that works")]
    [InlineData("stone.diametre_mm=3", "--set stone.diametre_mm: read an unknown field \"stone.diametre_mm\", expected the path of a field of the brief; did you mean \"stone.diameter_mm\"?")]
    [InlineData("stone.diametre=3", "--set stone.diametre: read an unknown field \"stone.diametre\", expected the path of a field of the brief; did you mean \"stone.diameter_mm\"?")]
    [InlineData("finish=3", "--set finish: read a group, expected one of its fields; write finish. and one of rhodium_um")]
    [InlineData("stone.diameter_mm", "--set stone.diameter_mm: read no =, expected a field, =, and a value; write --set stone.diameter_mm=3.5")]
    [InlineData("metal=silver", "--set metal: read silver, expected one of 30 names, such as gold-750-yellow; did you mean \"silver-925\"?")]
    [InlineData("clasp.safety=perhaps", "--set clasp.safety: read perhaps, expected true or false; write true or false without quotes")]
    [InlineData("length.ease_mm=9", "--set length.ease_mm: read ease_mm without wrist_mm, expected ease_mm only beside wrist_mm; remove ease_mm, or give the length as wrist_mm")]
    public void An_assignment_is_held_to_the_same_rules(string assignment, string? message)
    {
        var result = BriefReader.Override(Encoding.UTF8.GetBytes(Shortest), "b.json", [assignment]);
        Assert.Equal(message is null ? [] : [message], result.Messages);
        Assert.Equal(message is null, result.Brief is not null);
    }

    [Fact]
    public void An_assigned_wrist_takes_the_place_of_the_length()
    {
        var result = BriefReader.Override(Encoding.UTF8.GetBytes(Shortest), "b.json", ["length.wrist_mm=150", "length.ease_mm=9", "clasp.safety=false", "hinge.kind=pinned-knuckles"]);
        var brief = BriefDefaults.Resolve(result.Brief!);
        Assert.Equal(new LengthBrief(null, 150, 9), brief.Length);
        Assert.False(brief.Clasp.Safety);
        Assert.Equal(HingeKind.PinnedKnuckles, brief.Hinge.Kind);
    }

    [Fact]
    public void A_field_assigned_twice_is_refused()
        => Assert.Equal(
            ["--set stone.diameter_mm: read stone.diameter_mm a second time, expected every field once; remove one of the two"],
            BriefReader.Override(Encoding.UTF8.GetBytes(Shortest), "b.json", ["stone.diameter_mm=3", "stone.diameter_mm=3.5"]).Messages);

    [Fact]
    public void Two_assigned_forms_of_length_are_refused()
        => Assert.Equal(
            ["--set length.wrist_mm: read wrist_mm beside laid_flat_in, expected exactly one form of length; remove one of the two"],
            BriefReader.Override(Encoding.UTF8.GetBytes(Shortest), "b.json", ["length.wrist_mm=150", "length.laid_flat_in=7"]).Messages);

    [Theory]
    [InlineData(3.3333333, "link.stone_gap_min_mm=1")]
    [InlineData(3.3333334, "link.stone_gap_max_mm=0.1")]
    [InlineData(3, "link.stone_gap_min_mm=1")]
    [InlineData(3, "link.stone_gap_max_mm=0.1")]
    public void A_gap_that_a_refusal_names_is_accepted(double diameter, string assignment)
    {
        var stone = string.Create(CultureInfo.InvariantCulture, $"stone.diameter_mm={diameter}");
        BriefResult With(string gap) => BriefReader.Override(Encoding.UTF8.GetBytes(Shortest), "b.json", [stone, gap]);
        var fault = Assert.Single(With(assignment).Faults);
        var advised = fault.Expected.Split(' ')[^2];
        Assert.Empty(With($"{fault.Path}={advised}").Messages);
    }

    [Theory]
    [InlineData(9.534, 2, "9.54", "9.53")]
    [InlineData(9.53, 2, "9.53", "9.53")]
    [InlineData(0.1 + 0.2, 2, "0.30", "0.30")] // 0.30000000000000004
    [InlineData(16, 1, "16.0", "16.0")]
    public void Advice_is_rounded_to_the_side_that_works(double limit, int decimals, string least, string most)
        => Assert.Equal((least, most), (LimitText.AtLeast(limit, decimals), LimitText.AtMost(limit, decimals)));

    [Fact]
    public void Advice_takes_the_decimals_that_its_room_asks_for()
        => Assert.Equal(("9.5341", "9.5338"), (LimitText.AtLeast(9.53402, 2, room: 0.0002), LimitText.AtMost(9.53388, 2, room: 0.0002)));

    [Fact]
    public void A_file_of_nothing_but_faults_is_given_up_early()
    {
        var many = "{" + string.Join(",\n", Enumerable.Range(0, 60_000).Select(i => FormattableString.Invariant($"\"x{i}\": 1"))) + "}";
        var faults = Read(many).Faults;
        Assert.Equal(41, faults.Count);
        Assert.Equal("mend these first; the rest was not read", faults[^1].Hint);
    }

    [Fact]
    public void A_long_word_is_shortened_in_its_message()
        => Assert.Contains("read \"" + new string('x', 37) + "...\",", Read(Shortest.Replace("round", new string('x', 500_000))).Messages.Single(), StringComparison.Ordinal);

    [Fact]
    public void An_assignment_can_supply_what_the_file_lacks()
        => Assert.NotNull(BriefReader.Override(Encoding.UTF8.GetBytes(Shortest.Replace(", \"diameter_mm\": 3.0", "")), "b.json", ["stone.diameter_mm=2"]).Brief);

    [Fact]
    public void Every_field_has_a_range_that_holds_its_default()
        => Assert.All(BriefFields.All, field =>
        {
            Assert.NotEmpty(field.Help);
            Assert.True(field.Kind != FieldKind.Number || field.Low < field.High, field.Path);
            Assert.True(field.DefaultNumber is not { } number || (number >= field.Low && number <= field.High), field.Path);
            Assert.True(field.DefaultChoice is null || field.Choices.Contains(field.DefaultChoice), field.Path);
        });

    [Fact]
    public void Every_number_may_stand_at_both_ends_of_its_range_and_not_beyond()
        => Assert.All(BriefFields.All.Where(field => field.Kind == FieldKind.Number), field =>
        {
            bool IsAccepted(double value) => !BriefReader.Override(Encoding.UTF8.GetBytes(Shortest), "b", [string.Create(CultureInfo.InvariantCulture, $"{field.Path}={value:R}")])
                .Faults.Any(fault => fault.Path == field.Path && fault.Expected == field.Expected);
            Assert.True(IsAccepted(field.Low) && IsAccepted(field.High), field.Path);
            Assert.False(IsAccepted(Math.BitDecrement(field.Low)) || IsAccepted(Math.BitIncrement(field.High)), field.Path);
        });

    [Theory]
    [MemberData(nameof(Examples))]
    public void Every_example_can_be_read(string name)
    {
        using var file = File.OpenRead(Path.Combine(Repository.Root, "examples", name + ".json"));
        var result = BriefReader.Read(file, name);
        Assert.Empty(result.Messages);
        Assert.NotEmpty(BriefDefaults.Resolve(result.Brief!).Name);
    }

    [Fact]
    public void A_route_says_what_nobody_measured_and_a_measurement_overrules_it()
    {
        ProcessBrief Process(string process) => BriefDefaults.Resolve(BriefReader.Read(Encoding.UTF8.GetBytes(
            $$"""{"name":"t","metal":"gold-750-yellow","stone":{"diameter_mm":3},"length":{"laid_flat_mm":178},"process":{{process}}}"""), "t").Brief!).Process;
        var usual = Process("{}");
        Assert.Equal(("printed-resin", 0.6, 0.10, 0.05), (usual.Route, usual.ShrinkPercent, usual.FinishLossMm, usual.ToleranceMm));
        Assert.Equal((0.1118, 5, 20.62), (usual.ScaleSpreadPercent, usual.CommonSpreadUm, usual.FinishSpreadUm)); // Roots of 0.05^2 + 0.1^2, 4^2 + 3^2, 5^2 + 20^2
        Assert.Equal(3.085, Process("""{"route":"printed-resin-mould"}""").ShrinkPercent); // 2.5 % and 0.6 % one after the other
        Assert.Equal(2.9, Process("""{"route":"printed-resin-mould","shrink_percent":2.9}""").ShrinkPercent);
    }

    [Fact]
    public void The_schema_in_the_examples_is_in_step()
    {
        using var written = new MemoryStream();
        BriefSchema.Write(written);
        Golden.Match(written.ToArray(), "examples/linewright-brief.schema.json");
    }

    [Fact]
    public void The_schema_names_every_field_once_with_its_range()
    {
        using var written = new MemoryStream();
        BriefSchema.Write(written);
        var schema = JsonNode.Parse(written.ToArray())!;
        Assert.Equal("https://json-schema.org/draft/2020-12/schema", (string?)schema["$schema"]);
        Assert.Equal(["name", "metal", "stone", "length"], schema["required"]!.AsArray().Select(node => (string)node!));
        Assert.Equal(3, schema["properties"]!["length"]!["oneOf"]!.AsArray().Count);
        Assert.All(BriefFields.All, field =>
        {
            var owner = field.Group.Length == 0 ? schema : schema["properties"]![field.Group]!;
            Assert.False((bool)owner["additionalProperties"]!);
            var node = owner["properties"]![field.Name]!;
            Assert.Equal(field.Kind == FieldKind.Number ? field.Low : null, (double?)node["minimum"]);
            Assert.Equal(field.Kind == FieldKind.Number ? field.High : null, (double?)node["maximum"]);
            Assert.Equal(field.DefaultNumber, (double?)(node["default"]?.GetValueKind() == JsonValueKind.Number ? node["default"] : null));
        });
    }

    [Fact]
    public void Random_bytes_never_throw()
        => Gen.Byte.Array[0, 200].Sample(bytes => Assert.NotEmpty(BriefReader.Read(bytes, "b.json").Faults), iter: 3000);

    [Fact]
    public void Random_json_like_text_never_throws()
        => Gen.OneOf(((string[])["{", "}", "[", "]", ",", ":", "\"", "\\", "\\u", "d800", "name", "\"stone\"", "\"length\":", "1e400", "-", "null", "true", " ", "\n", "/*", "é", "\"name\":\"x\"", "0", "NaN"]).Select(Gen.Const).ToArray())
            .Array[0, 40].Sample(parts => Assert.NotEmpty(Read(string.Concat(parts)).Faults), iter: 5000);

    [Fact]
    public void A_brief_with_a_few_bytes_changed_is_read_or_answered()
    {
        var plain = Encoding.UTF8.GetBytes(Shortest);
        Gen.Select(Gen.Int[0, plain.Length - 1], Gen.Byte).Array[1, 4].Sample(changes =>
        {
            var bytes = (byte[])plain.Clone();
            foreach (var (at, value) in changes)
            {
                bytes[at] = value;
            }

            var result = BriefReader.Read(bytes, "b.json");
            Assert.Equal(result.Brief is null, result.Faults.Count > 0);
            Assert.All(result.Faults, fault => Assert.DoesNotContain("System.", fault.Describe("b.json"), StringComparison.Ordinal));
            if (result.Brief is { } brief)
            {
                BriefDefaults.Resolve(brief);
            }
        }, iter: 5000);
    }

    [Fact]
    public void A_brief_cut_short_is_answered()
    {
        var plain = Encoding.UTF8.GetBytes(Shortest);
        for (var length = 0; length < plain.Length; length++)
        {
            Assert.NotEmpty(BriefReader.Read(plain.AsMemory(0, length), "b.json").Faults);
        }
    }

    private static BriefResult Read(string text) => BriefReader.Read(Encoding.UTF8.GetBytes(text), "b.json");

    private static ResolvedBrief Resolve(string text) => BriefDefaults.Resolve(Read(text).Brief!);

    /// <summary>Endless spaces up to a length; counts what was taken.</summary>
    private sealed class CountedStream(long length) : Stream
    {
        public long Given { get; private set; }

        public override bool CanRead => true;

        public override bool CanSeek => false;

        public override bool CanWrite => false;

        public override long Length => length;

        public override long Position { get => Given; set => throw new NotSupportedException(); }

        public override int Read(byte[] buffer, int offset, int count)
        {
            var taken = (int)Math.Min(count, length - Given);
            buffer.AsSpan(offset, taken).Fill((byte)' ');
            Given += taken;
            return taken;
        }

        public override void Flush()
        {
        }

        public override long Seek(long offset, SeekOrigin origin) => throw new NotSupportedException();

        public override void SetLength(long value) => throw new NotSupportedException();

        public override void Write(byte[] buffer, int offset, int count) => throw new NotSupportedException();
    }
}
