namespace Linewright.Solids.Polyhedra;

/// <summary>A face while the body is being cut: which plane it lies on and its vertices, counter-clockwise from outside.</summary>
internal sealed record ClippedFace(int Plane, List<int> Loop);
