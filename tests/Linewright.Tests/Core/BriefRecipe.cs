using System.Collections.Immutable;
using System.Text;
using CsCheck;
using Linewright.Brief;
using Linewright.Materials;
using Linewright.Parts;

namespace Linewright.Tests.Core;

/// <summary>A brief as a designer might write it: stone, metal, length, and now and then a field that is left to us otherwise.</summary>
/// <param name="Settings">Lines of the brief as "group.field=value".</param>
public sealed record BriefRecipe(ImmutableArray<string> Settings)
{
    private const string Least = """{"name":"t","stone":{"diameter_mm":3},"metal":"gold-750-yellow","length":{"laid_flat_mm":178}}""";

    // Ranges in which a piece still makes sense; narrower than what a brief may say. Assumed.
    private static readonly Gen<string>[] Choices =
    [
        Number("stone.table_percent", 53, 62),
        Number("stone.crown_deg", 32, 37),
        Number("stone.pavilion_deg", 40, 42),
        Number("stone.girdle_percent", 2.5, 5),
        Number("setting.seat_fraction", 0.35, 0.45),
        Number("setting.culet_clearance_mm", 0.3, 0.8),
        Number("setting.tip_rise_mm", 0.3, 0.7),
        Number("hinge.diametral_clearance_mm", 0.05, 0.12),
        Number("hinge.side_clearance_mm", 0.05, 0.12),
        Number("hinge.relief_mm", 0.1, 0.2),
        Number("hinge.outward_stop_deg", 9, 18),
        Number("hinge.eye_width_mm", 1, 2),
        Number("link.opening_percent", 52, 75),
        Number("link.edge_radius_mm", 0.06, 0.3),
        Number("link.fillet_mm", 0.05, 0.35),
        Number("clasp.wall_mm", 0.7, 1.2),
        Number("clasp.press_mm", 0.45, 0.7),
        Number("clasp.side_play_mm", 0.06, 0.15),
        Number("clasp.width_ratio", 1.1, 1.6),
        Gen.Const("clasp.safety=false"),
        Number("process.finish_loss_mm", 0.05, 0.15),
        Number("wrist.depth_ratio", 0.65, 1),
        Number("wrist.exponent", 2, 3),
    ];

    private static readonly Gen<ImmutableArray<string>> Length = Gen.Frequency(
        (2, Number("length.laid_flat_mm", 160, 200).Select(line => ImmutableArray.Create(line))),
        (1, Gen.Select(Number("length.wrist_mm", 140, 180), Number("length.ease_mm", 6, 20), (wrist, ease) => ImmutableArray.Create(wrist, ease))));

    /// <summary>Stones of 1.5 to 6.5 mm in steps of 0.05, every metal, 160 to 200 mm laid flat or a wrist, up to four fields more.</summary>
    public static Gen<BriefRecipe> Any { get; } = Gen.Select(
        Gen.Int[30, 130].Select(twentieths => FormattableString.Invariant($"stone.diameter_mm={twentieths / 20.0:0.00}")),
        Gen.Int[0, MaterialTables.Alloys.Keys.Count - 1].Select(row => $"metal={MaterialTables.Alloys.Keys[row]}"),
        Length,
        Gen.Frequency((2, Gen.Const("auto")), (1, Gen.Const("eye-over-bar")), (1, Gen.Const("pinned-knuckles"))).Select(kind => $"hinge.kind={kind}"),
        Gen.OneOf(Choices).List[0, 4],
        (stone, metal, length, hinge, more) => new BriefRecipe(
            [stone, metal, .. length, hinge, .. more.DistinctBy(line => line.Split('=')[0], StringComparer.Ordinal)]));

    /// <summary>The same recipes for the same seed, each with the seed that gives it by itself.</summary>
    /// <param name="seed">As CsCheck writes it.</param>
    /// <param name="count">How many.</param>
    public static IEnumerable<(string Seed, BriefRecipe Recipe)> From(string seed, int count)
    {
        var random = PCG.Parse(seed);
        for (var i = 0; i < count; i++)
        {
            var here = random.ToString();
            yield return (here, Any.Generate(random, null, out _));
        }
    }

    /// <summary>The same with other lines in the place of its own, or added to them.</summary>
    public BriefRecipe With(params string[] lines) => new(
        [.. Settings.Where(old => !lines.Any(line => old.Split('=')[0] == line.Split('=')[0])), .. lines]);

    /// <summary>The brief, or what the reader says to it.</summary>
    public (ResolvedBrief? Brief, string Refusal) Read()
    {
        var read = BriefReader.Override(Encoding.UTF8.GetBytes(Least), "t", Settings);
        return (read.Brief is { } brief ? BriefDefaults.Resolve(brief) : null, string.Join("; ", read.Messages));
    }

    /// <summary>The line, or why there is none.</summary>
    public (LineDesign? Design, string Refusal) Solve()
    {
        var (brief, refusal) = Read();
        var design = brief is null ? null : LineDesign.Solve(brief);
        return design is { Chosen: not null } ? (design, "") : (null, design?.Refusal ?? refusal);
    }

    /// <inheritdoc/>
    public override string ToString() => string.Join(' ', Settings.Select(line => $"--set {line}"));

    private static Gen<string> Number(string path, double low, double high)
        => Gen.Int[0, 40].Select(step => FormattableString.Invariant($"{path}={low + (high - low) * step / 40:0.###}"));
}
