using Linewright.Assembly;
using Linewright.Materials;
using Linewright.Parts;

namespace Linewright.Checks;

/// <summary>How high the table stands over the skin: under small stones the joint, not the stone, decides it, and the wearer feels it.</summary>
internal sealed class LinkHeightCheck : ICheck
{
    private static readonly CheckRule Height = new("link-height", "mm", "0.68 of the stone and 0.9 more; up to half a millimetre over it: assumed", Marks.CommonPractice);

    /// <inheritdoc/>
    public IEnumerable<Finding> Run(PieceModel model, CancellationToken stop)
    {
        var piece = model.Piece;
        var mesh = model.MeshOf(PartRole.Link).Mesh;
        if (mesh.TriangleCount == 0)
        {
            yield break;
        }

        var usual = HeightRule.MostMm(piece.Link.StoneMm);
        yield return Height.AtMost(
            FormattableString.Invariant($"table over the skin, stones of {piece.Link.StoneMm:0.0#}"),
            piece.Link.TableHeightMm - mesh.Bounds.Low.Z, usual, double.PositiveInfinity,
            "take larger stones or a metal that casts thinner; or give hinge.bar_mm and hinge.eye_wall_mm as low as the caster will pour them");
    }
}
