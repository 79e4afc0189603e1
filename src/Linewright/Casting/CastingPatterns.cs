using System.Collections.Immutable;
using Linewright.Solids.Meshing;

namespace Linewright.Casting;

/// <summary>A casting plan for the printer: every sprued part meshed as finely as the brief asks and enlarged for shrinkage.</summary>
/// <param name="Plan">The plan; plates and trees are its.</param>
/// <param name="Meshes">In the order of the plan's parts; the part's frame times the scale.</param>
/// <param name="Report">The plan's, with what the meshing found.</param>
public sealed record CastingPatterns(CastingPlan Plan, ImmutableArray<Mesh> Meshes, CastingReport Report);
