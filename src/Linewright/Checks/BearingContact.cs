using Linewright.Assembly;
using Linewright.Solids.Measures;
using Linewright.Solids.Space;

namespace Linewright.Checks;

/// <summary>Where the metal carries the stone: the stone's surface within a hundredth of a millimetre of the metal, claw by claw.</summary>
/// <param name="BelowMm2">Per claw, on pavilion and lower girdle.</param>
/// <param name="AboveMm2">Per claw, on crown and upper girdle.</param>
internal sealed record BearingContact(double[] BelowMm2, double[] AboveMm2)
{
    // A setter's bearing is as good as this. Common practice.
    private const double ContactMm = 0.01;
    private const double SpacingMm = 0.04;

    // The claws stand outside this share of the radius.
    private const double Inner = 0.55;

    /// <summary>Claws that hold from below and from above.</summary>
    public int Carrying => Enumerable.Range(0, BelowMm2.Length).Count(i => BelowMm2[i] > 0 && AboveMm2[i] > 0);

    /// <summary>Feels the whole stone; the link's frame.</summary>
    public static BearingContact Read(PieceModel model)
    {
        var (piece, seat) = (model.Piece, Pose.Move(0, 0, model.Piece.Link.GirdleHeightMm));
        var metal = piece[Parts.PartRole.Link].AsSet;
        var inner = Inner * piece.Link.StoneMm / 2;
        var probes = ProbeSurface.Of(
            piece.SeatedStone, piece.Stone.Body.ToMesh().Moved(seat), SpacingMm, p => double.Hypot(p.X, p.Y) > inner);
        double[] below = new double[4], above = new double[4];
        for (var i = 0; i < probes.Count; i++)
        {
            var p = probes.Point(i);
            if (Math.Abs(metal.Distance(p)) <= ContactMm)
            {
                var claw = (p.X > 0 ? 0 : 1) + (p.Y > 0 ? 0 : 2);
                (p.Z < piece.Link.GirdleHeightMm ? below : above)[claw] += SpacingMm * SpacingMm;
            }
        }

        return new BearingContact(below, above);
    }
}
