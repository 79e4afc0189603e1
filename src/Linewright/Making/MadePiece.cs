using System.Collections.Immutable;
using Linewright.Assembly;

namespace Linewright.Making;

/// <summary>A piece ready to leave the screen: the model as worn and the patterns for the caster.</summary>
/// <param name="Model">As set, assembled.</param>
/// <param name="Patterns">As cast and compensated, in the order of the parts.</param>
public sealed record MadePiece(PieceModel Model, ImmutableArray<Pattern> Patterns)
{
    private readonly Lazy<ImmutableArray<WeighedPart>> weights = new(() => Weighing.Of(Model.Piece));

    /// <summary>What each part weighs, in the order of the parts; measured on first use.</summary>
    public ImmutableArray<WeighedPart> Weights => weights.Value;
}
