using Linewright.Assembly;
using Linewright.Materials;

namespace Linewright.Checks;

/// <summary>How much shorter the line gets with every hinge pushed together: the travel measured at one hinge, times their number.</summary>
internal sealed class PlayCheck : ICheck
{
    // Half a size is 6 mm, a third of that is felt as a bracelet that stretches. Assumed.
    private const double MostShare = 0.01;

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
            "one hundredth of the length",
            Marks.Assumed,
            isSmall ? "" : "lower hinge.diametral_clearance_mm");
    }
}
