using Linewright.Assembly;
using Linewright.Checks;

namespace Linewright.Staging;

/// <summary>The pose of a piece for a scene, measured to be true before it is shown.</summary>
public static class Poses
{
    // What is found to overlap is laid again with less of its joints' freedom, so often.
    private const int MostTries = 5;
    private const double Less = 0.8;

    // A bar drawn taut touches its eye, and what touches is found a rounding to either side: a nanometre is no overlap.
    private const double TouchMm = 1e-6;

    /// <summary>Lays the line out for a scene; takes about a second.</summary>
    /// <param name="model">The piece with its meshes.</param>
    /// <param name="scene">Which scene.</param>
    /// <param name="stop">Asks to stop.</param>
    /// <exception cref="InvalidOperationException">However little the joints were used, two neighbours overlap: the piece itself is at fault.</exception>
    public static RestingLine Of(PieceModel model, SceneKind scene, CancellationToken stop = default)
    {
        ArgumentNullException.ThrowIfNull(model);
        var freedom = JointFreedoms.Of(model);
        var line = Lay(model, scene, freedom, stop);
        var measure = RestingMeasure.Of(model, line);
        for (var tries = 1; measure.LeastGapMm < -TouchMm && tries < MostTries; tries++)
        {
            stop.ThrowIfCancellationRequested();
            freedom = freedom.Part(Less);
            line = Lay(model, scene, freedom, stop);
            measure = RestingMeasure.Of(model, line);
        }

        return measure.LeastGapMm >= -TouchMm
            ? line
            : throw new InvalidOperationException(FormattableString.Invariant($"the line cannot be laid {line.Name}: {measure.Where} overlap by {-measure.LeastGapMm:0.000000} mm"));
    }

    private static RestingLine Lay(PieceModel model, SceneKind scene, JointFreedom freedom, CancellationToken stop) => scene switch
    {
        SceneKind.Draped => LinePoses.Draped(model.Piece, freedom),
        SceneKind.Closed => LinePoses.Closed(model, freedom, out _, stop),
        SceneKind.Clasp => LinePoses.Clasp(model.Piece, freedom),
        SceneKind.Link => LinePoses.Link(),
        _ => LinePoses.Flat(model.Piece),
    };
}
