using Linewright.Parts;
using Linewright.Studio.Pieces;
using Linewright.Studio.Wire;

namespace Linewright.Studio.Serving;

/// <summary>Computes the demo piece once while the browser is still starting, so that the first real one is not kept waiting for compiled code.</summary>
internal static class WarmUp
{
    /// <summary>Begins, and returns at once.</summary>
    public static void Begin(PieceShelf shelf, CancellationToken stop) => _ = Task.Run(
        () =>
        {
            using var demo = typeof(WarmUp).Assembly.GetManifestResourceStream("demo.json")!;
            using var text = new MemoryStream();
            demo.CopyTo(text);
            var solved = shelf.Of(text.ToArray());
            PieceNumbers.Of(solved);
            MeshPacket.Pack(solved, PartState.AsSet, "moving", PieceView.Moving(solved, PartState.AsSet, null, stop));
        },
        stop);
}
