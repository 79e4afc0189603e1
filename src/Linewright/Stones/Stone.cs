using System.Collections.Immutable;
using Linewright.Solids.Polyhedra;
using Linewright.Solids.Space;

namespace Linewright.Stones;

/// <summary>One cut stone as an exact body. Origin on its axis at half the girdle's height, z up to the table, mm.</summary>
/// <remarks>A bezel main faces +x. Built by <see cref="RoundBrilliant.Cut"/>; every figure is read off the body or its proportions.</remarks>
public sealed record Stone
{
    // 0.001 cm3 in a mm3, 0.2 g in a carat: mm3 times g/cm3 over 200.
    private const double Mm3GravityPerCarat = 200;

    /// <summary>Girdle diameter.</summary>
    public required double DiameterMm { get; init; }

    /// <summary>What it was cut to.</summary>
    public required BrilliantProportions Proportions { get; init; }

    /// <summary>The body.</summary>
    public required ConvexPolyhedron Body { get; init; }

    /// <summary>What each face of <see cref="Body"/> is, in the order of its faces.</summary>
    public required ImmutableArray<FacetKind> FacetKinds { get; init; }

    /// <summary>The girdle seen from above.</summary>
    public required IGirdleOutline Outline { get; init; }

    /// <summary>Half the girdle's thickness where the mains meet it.</summary>
    public double GirdleHalfMm => Proportions.GirdleRatio * DiameterMm / 2;

    /// <summary>Crown height, girdle to table.</summary>
    public double CrownHeightMm => Proportions.CrownHeightRatio * DiameterMm;

    /// <summary>Pavilion depth, girdle to culet.</summary>
    public double PavilionDepthMm => Proportions.PavilionDepthRatio * (1 - Proportions.CuletRatio) * DiameterMm;

    /// <summary>Height of the table over the origin.</summary>
    public double TableHeightMm => GirdleHalfMm + CrownHeightMm;

    /// <summary>Height of the culet over the origin: below zero.</summary>
    public double CuletHeightMm => -GirdleHalfMm - PavilionDepthMm;

    /// <summary>Table to culet.</summary>
    public double DepthMm => TableHeightMm - CuletHeightMm;

    /// <summary>Of the body.</summary>
    public double VolumeMm3 => Body.Volume;

    /// <summary>Facets of the cut, without the flats that stand for the girdle: 57, or 58 with a culet.</summary>
    public int FacetCount => FacetKinds.Length - Count(FacetKind.Girdle);

    /// <summary>How many facets there are of one kind.</summary>
    public int Count(FacetKind kind) => FacetKinds.Count(k => k == kind);

    /// <summary>Exact weight in carats for a specific gravity (g/cm3).</summary>
    /// <exception cref="ArgumentOutOfRangeException">The gravity is not above zero.</exception>
    public double WeightCt(double specificGravity) => VolumeMm3 * Guard.Positive(specificGravity) / Mm3GravityPerCarat;

    /// <summary>Weight in carats as the trade would estimate it from diameter and depth.</summary>
    /// <exception cref="ArgumentOutOfRangeException">The gravity is not above zero.</exception>
    public double TradeWeightCt(double specificGravity) => TradeWeight.RoundCt(DiameterMm, DepthMm, specificGravity);

    /// <summary>Distance from the axis to the mains at a height over the origin: the profile along a main's middle, within the body everywhere.</summary>
    /// <remarks>0 above the table and below the culet.</remarks>
    public double ProfileRadiusMm(double height)
    {
        if (height > TableHeightMm || height < CuletHeightMm)
        {
            return 0;
        }

        var beyond = Math.Max(0, Math.Abs(height) - GirdleHalfMm);
        var slope = double.DegreesToRadians(height > 0 ? Proportions.CrownDeg : Proportions.PavilionDeg);
        return DiameterMm / 2 - beyond / Math.Tan(slope);
    }

    /// <summary>Distance from the axis to the farthest point of the body at a height over the origin; 0 where there is none.</summary>
    /// <remarks>Exact on the body: more than <see cref="ProfileRadiusMm"/>, because halves bulge between the mains.</remarks>
    public double ReachMm(double height)
    {
        var reach = 0.0;
        foreach (var face in Body.Faces)
        {
            for (var i = 0; i < face.Loop.Length; i++)
            {
                Vec3 a = Body.Vertices[face.Loop[i]], b = Body.Vertices[face.Loop[(i + 1) % face.Loop.Length]];
                if (Math.Min(a.Z, b.Z) > height || Math.Max(a.Z, b.Z) < height)
                {
                    continue;
                }

                if (a.Z == b.Z)
                {
                    reach = Math.Max(reach, Math.Max(double.Hypot(a.X, a.Y), double.Hypot(b.X, b.Y)));
                    continue;
                }

                var at = a + (b - a) * ((height - a.Z) / (b.Z - a.Z));
                reach = Math.Max(reach, double.Hypot(at.X, at.Y));
            }
        }

        return reach;
    }
}
