using Linewright.Pictures.Images;
using Linewright.Staging;

namespace Linewright.Cli;

/// <summary>Pictures of one piece, which is built once for all of them.</summary>
internal interface IPhotoSession : IDisposable
{
    /// <summary>Draws one picture.</summary>
    /// <exception cref="OperationCanceledException">It was stopped.</exception>
    Picture Take(PictureOrder order, PictureStage stage, CancellationToken stop);
}
