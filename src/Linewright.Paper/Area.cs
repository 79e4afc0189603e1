using System.Collections.Immutable;
using Linewright.Solids.Space;

namespace Linewright.Paper;

/// <summary>A filled area: what lies within an odd number of its loops.</summary>
/// <param name="Loops">Closed loops of three points or more.</param>
/// <param name="Grey">0 black to 1 white.</param>
public sealed record Area(ImmutableArray<ImmutableArray<PaperPoint>> Loops, double Grey = 0) : Mark
{
    /// <summary>0 black to 1 white.</summary>
    public double Grey { get; } = Guard.InRange(Grey, 0, 1);

    /// <inheritdoc/>
    public override PaperBox Box => PaperBox.Around(Loops.SelectMany(loop => loop));

    /// <summary>One polygon.</summary>
    public static Area Polygon(params ReadOnlySpan<PaperPoint> points) => new([[.. points]]);

    /// <inheritdoc/>
    public override Mark Moved(PaperPoint step) => this with { Loops = [.. Loops.Select(loop => ImmutableArray.CreateRange(loop, p => p + step))] };
}
