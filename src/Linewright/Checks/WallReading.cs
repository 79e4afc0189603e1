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
    /// <summary>Who gives the wall its thickness, as its part declares.</summary>
    public MadeBy Made { get; init; } = MadeBy.Casting;

    /// <summary>How many of the two faces of the wall are polished, as its part declares.</summary>
    public int PolishedFaces { get; init; } = 2;

    /// <summary>True where the wall is rolled and takes no scatter from a casting.</summary>
    public bool IsRolled => Made == MadeBy.Rolling;

    /// <summary>True where bench or mill make the wall and gauge it: the setter leaves a claw's tip and the rim of a bearing, a mill the strip.</summary>
    public bool IsBenchMade => Made != MadeBy.Casting;

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

                readings.Add(new WallReading(part.Name, feature.Name, part.Count, measured, feature.WallLimitMm) { Made = feature.Made, PolishedFaces = feature.PolishedFaces });
            }
        }

        return readings.ToImmutable();
    }

    /// <summary>Those of some walls that a casting's scatter decides.</summary>
    public static ImmutableArray<WallReading> AsCast(ImmutableArray<WallReading> walls) => [.. walls.Where(wall => !wall.IsBenchMade)];
}
