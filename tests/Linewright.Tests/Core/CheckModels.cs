using System.Collections.Concurrent;
using System.Text;
using Linewright.Assembly;
using Linewright.Brief;
using Linewright.Checks;
using Linewright.Parts;
using Linewright.Solids.Meshing;

namespace Linewright.Tests.Core;

/// <summary>Pieces for the checks: links meshed coarsely, each brief once for all tests; what is not asked for has no mesh.</summary>
internal static class CheckModels
{
    private const double CellMm = 0.08, DeviationMm = 0.03;

    /// <summary>A brief that is wrong in several ways at once: stones close, stops late, eyes thin, a wrist with corners.</summary>
    public const string Tight =
        "link.stone_gap_mm=0.15 link.stone_gap_min_mm=0.05 hinge.outward_stop_deg=20 hinge.eye_wall_mm=0.4 wrist.depth_ratio=0.5 wrist.exponent=4";

    private static readonly ConcurrentDictionary<(double, string, bool), Lazy<PieceModel>> Known = new();

    /// <summary>A bracelet of seven inches in white gold.</summary>
    /// <param name="diameter">Of the stones, mm.</param>
    /// <param name="settings">More lines of the brief as "group.field=value", parted by spaces.</param>
    /// <param name="isMeshed">Whether link and pin get their meshes; without them only what reads the solids can run.</param>
    public static PieceModel Of(double diameter, string settings = "", bool isMeshed = true)
        => Known.GetOrAdd((diameter, settings, isMeshed), key => new Lazy<PieceModel>(() => Build(key.Item1, key.Item2, key.Item3))).Value;

    /// <summary>What one check finds under one rule.</summary>
    public static IReadOnlyList<Finding> Find(ICheck check, PieceModel model, string rule)
        => [.. check.Run(model, CancellationToken.None).Where(finding => finding.Rule == rule)];

    /// <summary>The one finding of a rule.</summary>
    public static Finding One(ICheck check, PieceModel model, string rule) => Assert.Single(Find(check, model, rule));

    private static PieceModel Build(double diameter, string settings, bool isMeshed)
    {
        var groups = new SortedDictionary<string, List<string>>(StringComparer.Ordinal)
        {
            ["stone"] = [FormattableString.Invariant($"\"diameter_mm\":{diameter}")],
            ["length"] = ["\"laid_flat_mm\":177.8"],
        };
        foreach (var setting in $"{FormattableString.Invariant($"link.stone_gap_mm={0.3 + 0.05 * diameter} hinge.outward_stop_deg=14 hinge.diametral_clearance_mm=0.10")} {settings}".Split(' ', StringSplitOptions.RemoveEmptyEntries))
        {
            var (path, value) = (setting.Split('=')[0].Split('.'), setting.Split('=')[1]);
            groups.TryAdd(path[0], []);
            groups[path[0]].RemoveAll(line => line.StartsWith($"\"{path[1]}\":", StringComparison.Ordinal));
            groups[path[0]].Add($"\"{path[1]}\":{value}");
        }

        var json = $$"""{"name":"t","metal":"gold-750-white-pd",{{string.Join(',', groups.Select(g => $"\"{g.Key}\":{{{string.Join(',', g.Value)}}}"))}}}""";
        var read = BriefReader.Read(Encoding.UTF8.GetBytes(json), "t");
        Assert.True(read.Brief is not null, string.Join("; ", read.Faults));
        var piece = PartsBuilder.Build(LineDesign.Solve(BriefDefaults.Resolve(read.Brief)));
        var meshes = piece.Parts.Select(part => isMeshed && part.Role is PartRole.Link or PartRole.Pin
            ? Mesher.Run(part.AsSet, new MeshSettings(CellMm, DeviationMm, true))
            : new MeshOutcome { Status = MeshStatus.Meshed });
        return PieceModel.Of(piece, [.. meshes]);
    }
}
