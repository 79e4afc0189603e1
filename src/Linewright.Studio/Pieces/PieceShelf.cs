using Linewright.Brief;
using Linewright.Parts;

namespace Linewright.Studio.Pieces;

/// <summary>Briefs solved lately, so that picture, numbers and checks of one brief share their work.</summary>
/// <remarks>Safe from several threads. The least recently used one is dropped: a few dozen megabytes in all.</remarks>
public sealed class PieceShelf
{
    // The piece on screen, the one before an undo, and those of a second window.
    private const int Most = 4;

    private readonly Lock gate = new();
    private readonly LinkedList<SolvedPiece> recent = new();

    /// <summary>Reads a brief and solves it as far as numbers go.</summary>
    /// <exception cref="BriefRefusedException">The brief has faults.</exception>
    /// <exception cref="LineRefusedException">No line closes.</exception>
    public SolvedPiece Of(ReadOnlyMemory<byte> utf8)
    {
        var read = BriefReader.Read(utf8, "brief");
        if (read.Brief is null)
        {
            throw new BriefRefusedException(read.Faults);
        }

        var brief = BriefDefaults.Resolve(read.Brief);
        return Known(brief) ?? Add(Solve(brief));
    }

    private static SolvedPiece Solve(ResolvedBrief brief)
    {
        var design = LineDesign.Solve(brief);
        return design.Chosen is null ? throw new LineRefusedException(design) : new SolvedPiece(design);
    }

    private SolvedPiece? Known(ResolvedBrief brief)
    {
        lock (gate)
        {
            for (var node = recent.First; node is not null; node = node.Next)
            {
                if (node.Value.Brief == brief)
                {
                    recent.Remove(node);
                    recent.AddFirst(node);
                    return node.Value;
                }
            }

            return null;
        }
    }

    private SolvedPiece Add(SolvedPiece piece)
    {
        lock (gate)
        {
            recent.AddFirst(piece);
            while (recent.Count > Most)
            {
                recent.RemoveLast();
            }

            return piece;
        }
    }
}
