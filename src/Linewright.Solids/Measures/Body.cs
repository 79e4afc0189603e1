using Linewright.Solids.Shapes;

namespace Linewright.Solids.Measures;

/// <summary>A named solid with its probes: what a clearance is measured between, so that the answer can say what touches.</summary>
/// <param name="Name">What a maker calls it: stone, claw, rail, eye.</param>
/// <param name="Solid">The body in its part's frame, mm.</param>
/// <param name="Probes">Points on its surface in the same frame.</param>
public sealed record Body(string Name, Solid Solid, ProbeSurface Probes);
