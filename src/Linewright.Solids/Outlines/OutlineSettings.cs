using Linewright.Solids.Space;

namespace Linewright.Solids.Outlines;

/// <summary>How closely a view is drawn, mm.</summary>
public sealed record OutlineSettings
{
    /// <summary>For meshes within 5 um of their solids: lines lie within 15 um of where they belong.</summary>
    public static OutlineSettings Fine { get; } = new();

    /// <summary>
    /// How far off the surface the eye looks past it. More than twice what the mesh may be off its solid, so that no
    /// triangle hides the line on itself; the place where one line goes behind another may be out by as much.
    /// </summary>
    public double LiftMm { get; init; } = 0.012;

    /// <summary>A line that runs along another within this distance is not drawn again.</summary>
    public double SameMm { get; init; } = 0.02;

    /// <summary>Points that lie on their line within this distance are left out.</summary>
    public double StraightMm { get; init; } = 0.003;

    /// <summary>A line shorter than this is not drawn. What an eye sees at 10:1 on paper is 0.1 mm. Assumed.</summary>
    public double ShortestMm { get; init; } = 0.04;

    /// <summary>A contour shorter than this that ends in the middle of a face is not drawn, nor one of twice the length that begins there too: a dent that a drawing need not tell of. Assumed.</summary>
    public double SpeckMm { get; init; } = 0.35;

    /// <summary>Whether lines behind others are drawn too.</summary>
    public bool WithHidden { get; init; }

    /// <summary>All that lies nearer to the eye than this depth is taken away, and the cut is drawn; null leaves all. mm along the view's direction to the eye.</summary>
    public double? CutDepth { get; init; }

    /// <summary>The settings for a mesh that may be off its solid by a deviation; the fine ones up to 5 um.</summary>
    /// <exception cref="ArgumentOutOfRangeException">The deviation is not a finite number above zero.</exception>
    public static OutlineSettings For(double deviationMm)
    {
        // However coarse the mesh, lines a tenth of a millimetre apart stay two.
        var coarser = Math.Max(1, Guard.Positive(deviationMm) / 0.005);
        return new OutlineSettings
        {
            LiftMm = Fine.LiftMm * coarser,
            SameMm = Math.Min(0.05, Fine.SameMm * coarser),
            StraightMm = Math.Min(0.02, Fine.StraightMm * coarser),
            ShortestMm = Math.Min(0.15, Fine.ShortestMm * coarser),
        };
    }
}
