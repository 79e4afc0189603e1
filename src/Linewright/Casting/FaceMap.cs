using Linewright.Materials;
using Linewright.Parts;
using Linewright.Solids.Measures;
using Linewright.Solids.Space;

namespace Linewright.Casting;

/// <summary>Tells the faces of a part as cast apart: those that finishing takes metal from, and those that keep their size.</summary>
/// <remarks>
/// Read off the two solids: where the part as cast stands out from the part as set by the allowance, the face is polished; where both are
/// the same, it is a bore, a bearing, a bar, the catch or a relief. Where they differ by more the bench bends or files the
/// metal: claws and open eyes. Without an allowance the two cannot be told apart and every face counts as kept.
/// </remarks>
public sealed class FaceMap(Part part, double allowanceMm)
{
    // A face is told by half of the allowance; a shape that the bench changes, by twice of it.
    private const double Half = 0.5, Twice = 1.7;

    /// <summary>The kind of a face.</summary>
    /// <param name="onCast">A point on the surface as cast, in the part's frame.</param>
    public FaceKind KindAt(Vec3 onCast) => Kind(part.AsSet.Distance(onCast));

    /// <summary>True for each point where a sprue may be cut off: on polished face that the bench leaves in its shape.</summary>
    /// <param name="onCast">Points on the surface as cast, in the part's frame.</param>
    public bool[] AreFree(IReadOnlyList<Vec3> onCast)
        => [.. ManyDistances.Of(part.AsSet, onCast).Select(over => Kind(over) == FaceKind.Polished && over <= Twice * allowanceMm)];

    /// <summary>True for each point just beside the part whose nearest face must stay as it is.</summary>
    /// <param name="beside">Points outside the part as cast, near its surface, in the part's frame.</param>
    public bool[] AreBesideKept(IReadOnlyList<Vec3> beside)
        => [.. ManyDistances.Of(part.AsSet, beside).Zip(ManyDistances.Of(part.AsCast, beside), (set, cast) => Kind(set - cast) == FaceKind.Kept)];

    private FaceKind Kind(double over) => allowanceMm > 0 && over > Half * allowanceMm ? FaceKind.Polished : FaceKind.Kept;
}
