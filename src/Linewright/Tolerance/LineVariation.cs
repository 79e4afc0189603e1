using System.Collections.Immutable;
using Linewright.Checks;
using Linewright.Solids.Space;

namespace Linewright.Tolerance;

/// <summary>A line as numbers: what each size should be and how far it scatters. All mm; spreads are one standard deviation.</summary>
/// <remarks>
/// Every size is normal about its nominal. What belongs to one part is independent of all others; scale and common face offset are
/// shared by the parts of a tree. Derivation of which size gets which spread: docs/notes/tolerance.md.
/// </remarks>
public sealed record LineVariation
{
    /// <summary>Stone-set links.</summary>
    public required int Links { get; init; }

    /// <summary>Cast parts on one tree; links are hung in the order of the line, the clasp last.</summary>
    public required int LinksPerTree { get; init; }

    /// <summary>From a link's bar axis to the centre of its eye.</summary>
    public required double LinkMm { get; init; }

    /// <summary>From the box's bar axis to the face of the lip that holds the catch.</summary>
    public required double BoxMm { get; init; }

    /// <summary>From the catch to the centre of the tongue's eye.</summary>
    public required double TongueMm { get; init; }

    /// <summary>Hole less bar, on the diameter.</summary>
    public required double BoreMm { get; init; }

    /// <summary>Room between the cheeks less the eye's width: both sides together.</summary>
    public required double SideMm { get; init; }

    /// <summary>The clasp's gaps.</summary>
    public required ClaspVariation Clasp { get; init; }

    /// <summary>The walls that could fall under their limits.</summary>
    public ImmutableArray<WallReading> Walls { get; init; } = [];

    /// <summary>How far a wall may come out under its limit before its casting is refused.</summary>
    public double ShortfallMm { get; init; }

    /// <summary>How much over their least the walls are drawn already.</summary>
    public double ReserveMm { get; init; }

    /// <summary>Spread of a tree's scale, as a part of a length.</summary>
    public required double ScaleSpread { get; init; }

    /// <summary>Spread of where all faces of a tree come to lie together.</summary>
    public required double FacesSpreadMm { get; init; }

    /// <summary>Spread of a size between two faces as cast.</summary>
    public required double SizeSpreadMm { get; init; }

    /// <summary>Spreads of a joint's clearances.</summary>
    public required JointSpread Joint { get; init; }

    /// <summary>Spread of what finishing takes from a face.</summary>
    public required double LossSpreadMm { get; init; }

    /// <summary>Joints: one between two links, two at the clasp.</summary>
    public int Joints => Links + 1;

    /// <summary>Trees that the line is cast on.</summary>
    public int Trees => (Links + LinksPerTree - 1) / LinksPerTree;

    /// <summary>Closed, taut, laid flat, with everything at its nominal.</summary>
    public double LaidFlatMm => Links * LinkMm + BoxMm + TongueMm + Joints * BoreMm / 2;

    /// <summary>Spread of the distance between two centres of one casting: each centre is the mean of two faces.</summary>
    public double CentresSpreadMm => SizeSpreadMm / Math.Sqrt(2);

    /// <summary>Spread of the distance between a centre and a face of one casting.</summary>
    public double CentreToFaceSpreadMm => SizeSpreadMm * Math.Sqrt(0.75);

    /// <summary>The tree that a link hangs on.</summary>
    internal int TreeOf(int link) => link / LinksPerTree;

    /// <summary>How the walls scatter.</summary>
    internal WallScatter WallScatter => new(SizeSpreadMm, LossSpreadMm, FacesSpreadMm, ScaleSpread, Clasp.StripSpreadMm, Links, LinksPerTree);

    /// <summary>Spread of the thickness of a wall on its own.</summary>
    internal double WallSpreadMm(WallReading wall) => WallScatter.OwnMm(wall);

    /// <summary>Refuses numbers that no line has.</summary>
    internal LineVariation Checked()
    {
        Guard.InRange(Links, 2, 10_000);
        Guard.InRange(LinksPerTree, 1, 10_000);
        Guard.Positive(LinkMm);
        Guard.Positive(BoxMm);
        Guard.Positive(TongueMm);
        Guard.Finite(BoreMm);
        Guard.Finite(SideMm);
        Guard.InRange(ScaleSpread, 0, 0.1);
        Guard.InRange(FacesSpreadMm, 0, 1);
        Guard.InRange(SizeSpreadMm, 0, 1);
        Guard.InRange(LossSpreadMm, 0, 1);
        Guard.InRange(ShortfallMm, 0, 1);
        return this;
    }
}
