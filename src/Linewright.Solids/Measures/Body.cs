using Linewright.Solids.Shapes;
using Linewright.Solids.Space;

namespace Linewright.Solids.Measures;

/// <summary>A named solid with its probes: what a clearance is measured between, so that the answer can say what touches.</summary>
/// <param name="Name">What a maker calls it: stone, claw, rail, eye.</param>
/// <param name="Solid">The body in its part's frame, mm.</param>
/// <param name="Probes">Points on its surface in the same frame.</param>
public sealed record Body(string Name, Solid Solid, ProbeSurface Probes)
{
    /// <summary>The solid without what cannot matter within a ball about a point of its frame: the same bits, sooner.</summary>
    internal Solid Near(Vec3 centre, double radius) => Probes.Near(Solid, centre, radius);
}
