using System.Collections.Immutable;
using Linewright.Parts;

namespace Linewright.Checks;

/// <summary>The thinnest wall of one feature of one part, as the wall check measured it.</summary>
/// <param name="Part">Name of the part.</param>
/// <param name="Feature">Name of the feature.</param>
/// <param name="Count">How many of the part the line has.</param>
/// <param name="ThicknessMm">As set; where nothing thin was met, what was looked to.</param>
/// <param name="LimitMm">Least wall.</param>
public sealed record WallReading(string Part, string Feature, int Count, double ThicknessMm, double LimitMm)
{
    /// <summary>How many of the two faces of such a wall are polished; the others are bores, bearings, seats or the inside of the box.</summary>
    public int PolishedFaces => Feature switch
    {
        "bar" or "tongue strip" => 0,
        "eye" or "cheek" or "claw heel" or "bearing" or "box wall" or "lip" or "carrier" => 1,
        _ => 2,
    };

    /// <summary>True where the wall is rolled or drawn and takes no scatter from a casting.</summary>
    public bool IsRolled => Feature == "tongue strip";

    /// <summary>True where the bench makes the wall and gauges it: the setter leaves a claw's tip and the rim of a bearing, a mill the strip.</summary>
    public bool IsBenchMade => Feature is "tongue strip" or "claw tip" or "bearing";

    /// <summary>Reads the walls back from the findings of the wall check, feature by feature in the order of the parts.</summary>
    /// <remarks>A part without a surface has one finding without a number; it gives no reading.</remarks>
    public static ImmutableArray<WallReading> Of(Piece piece, IEnumerable<Finding> findings)
    {
        ArgumentNullException.ThrowIfNull(piece);
        ArgumentNullException.ThrowIfNull(findings);
        using var walls = findings.Where(finding => finding.Rule == WallCheck.Rule).GetEnumerator();
        var readings = ImmutableArray.CreateBuilder<WallReading>();
        foreach (var part in piece.Parts.Where(part => part.IsCast && !part.Features.IsEmpty))
        {
            foreach (var feature in part.Features)
            {
                if (!walls.MoveNext() || walls.Current.Measured is not { } measured)
                {
                    break;
                }

                readings.Add(new WallReading(part.Name, feature.Name, part.Count, measured, feature.WallLimitMm));
            }
        }

        return readings.ToImmutable();
    }

    /// <summary>Those of some walls that a casting's scatter decides.</summary>
    public static ImmutableArray<WallReading> AsCast(ImmutableArray<WallReading> walls) => [.. walls.Where(wall => !wall.IsBenchMade)];
}
