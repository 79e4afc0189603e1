using System.Collections.Immutable;

namespace Linewright.Solids.Polyhedra;

/// <summary>One flat face of a convex polyhedron.</summary>
/// <param name="PlaneIndex">Which of the half-spaces given it lies on.</param>
/// <param name="Plane">That half-space, in the body's present frame, mm.</param>
/// <param name="Loop">Vertex indices, counter-clockwise seen from outside; at least three.</param>
/// <param name="Area">In mm2.</param>
public sealed record Face(int PlaneIndex, Plane Plane, ImmutableArray<int> Loop, double Area);
