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
    public SolvedPiece Of(ReadOnlyMemory<byte> utf8) => Of(utf8, []);

    /// <summary>The same with some values replaced, as the command line's --set replaces them.</summary>
    /// <param name="utf8">The brief.</param>
    /// <param name="assignments">Each as field=value.</param>
    /// <exception cref="BriefRefusedException">The brief or an assignment has faults.</exception>
    /// <exception cref="LineRefusedException">No line closes.</exception>
    public SolvedPiece Of(ReadOnlyMemory<byte> utf8, IReadOnlyList<string> assignments)
    {
        var read = BriefReader.Override(utf8, "brief", assignments);
        if (read.Brief is null)
        {
            throw new BriefRefusedException(read.Faults);
        }

        var brief = BriefDefaults.Resolve(read.Brief);
        return Known(brief) ?? Add(Solve(brief));
    }

    private SolvedPiece Solve(ResolvedBrief brief)
    {
        var design = LineDesign.Solve(brief);
        return design.Chosen is null ? throw new LineRefusedException(design) : new SolvedPiece(design, TwinOf(brief));
    }

    // Another spread, another printer's plate or another name make the same solids, which need not be meshed again.
    private SolvedPiece? TwinOf(ResolvedBrief brief)
    {
        var shape = ShapeOf(brief);
        lock (gate)
        {
            return recent.FirstOrDefault(known => ShapeOf(known.Brief) == shape)?.Eldest;
        }
    }

    private static ResolvedBrief ShapeOf(ResolvedBrief brief) => brief with
    {
        Name = "",
        Process = brief.Process with
        {
            ToleranceMm = 0,
            ScaleSpreadPercent = 0,
            CommonSpreadUm = 0,
            FinishSpreadUm = 0,
            FitSpreadUm = null,
            SprueMm = null,
            SprueLengthMm = 0,
            StemMm = null,
            PartsPerTree = 0,
            PlateXMm = 0,
            PlateYMm = 0,
            PlateZMm = 0,
            PlateGapMm = 0,
        },
    };

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
