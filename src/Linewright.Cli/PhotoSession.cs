using Linewright.Assembly;
using Linewright.Parts;
using Linewright.Pictures.Images;
using Linewright.Staging;

namespace Linewright.Cli;

/// <summary>The photographer at this program's workbench.</summary>
internal sealed class PhotoSession(Piece piece) : IPhotoSession
{
    private Photographer? photographer;

    /// <inheritdoc/>
    public Picture Take(PictureOrder order, PictureStage stage, CancellationToken stop)
    {
        if (photographer is null)
        {
            stage.Report(FormattableString.Invariant($"Meshing {piece.Parts.Length} solids"));
            photographer = new Photographer(PieceModel.Build(piece, stop: stop));
        }

        stage.Report($"Laying the line {PictureWords.Of(order.Stage.Scene)}");
        return photographer.Take(order, stage, stop);
    }

    /// <inheritdoc/>
    public void Dispose() => photographer = null;
}
