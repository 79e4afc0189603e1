using System.Collections.Immutable;
using Linewright.Assembly;
using Linewright.Casting;

namespace Linewright.Making;

/// <summary>A piece ready to leave the screen: the model as worn, the patterns for the caster, and how they are cast.</summary>
/// <param name="Model">As set, assembled.</param>
/// <param name="Patterns">As cast and compensated, in the order of the parts.</param>
/// <param name="Casting">What it weighs, and the metal to weigh out for it.</param>
public sealed record MadePiece(PieceModel Model, ImmutableArray<Pattern> Patterns, CastingPlan Casting);
