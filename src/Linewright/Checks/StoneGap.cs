using Linewright.Assembly;
using Linewright.Solids.Polyhedra;
using Linewright.Solids.Space;

namespace Linewright.Checks;

/// <summary>Distance between the stones of two neighbouring links, exact on their facets.</summary>
internal static class StoneGap
{
    /// <summary>With the first link in its own frame and the next at a pose.</summary>
    public static Separation At(PieceModel model, Pose next)
    {
        var seat = Pose.Move(0, 0, model.Piece.Link.GirdleHeightMm);
        var body = model.Piece.Stone.Body;
        return ConvexDistance.Between(body, seat, body, seat.Then(next));
    }
}
