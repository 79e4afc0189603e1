using Linewright.Assembly;
using Linewright.Materials;

namespace Linewright.Checks;

/// <summary>How much shorter the line gets with every hinge pushed together: the travel measured at one hinge, times their number.</summary>
internal sealed class PlayCheck : ICheck
{
    // Half a size is 12.7 mm; a line that gives a third of that reads as stretched: 2.5 % of seven inches. Assumed.
    private const double MostShare = 0.025;

    /// <inheritdoc/>
    public IEnumerable<Finding> Run(PieceModel model, CancellationToken stop)
    {
        var hinges = model.Piece.Layout.Count + 1;
        var travel = HingeTravel.Along(Joint.Of(model));
        var (lost, most) = (hinges * travel.TravelMm, MostShare * model.Piece.Layout.LaidFlatMm);
        var isSmall = lost <= most;
        yield return new Finding(
            "play-shortens",
            isSmall ? Verdict.Pass : Verdict.Caution,
            FormattableString.Invariant($"{hinges} hinges of {travel.TravelMm:0.000} mm each, pushed together"),
            lost, most, "mm",
            "a fortieth of the length, a third of half a size",
            Marks.Assumed,
            isSmall ? "" : "lower hinge.diametral_clearance_mm");
    }
}
