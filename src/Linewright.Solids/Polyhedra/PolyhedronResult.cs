using System.Diagnostics.CodeAnalysis;

namespace Linewright.Solids.Polyhedra;

/// <summary>A body, or the reason why there is none.</summary>
public sealed record PolyhedronResult(PolyhedronStatus Status, ConvexPolyhedron? Body)
{
    /// <summary>True where there is a body.</summary>
    [MemberNotNullWhen(true, nameof(Body))]
    public bool IsSolid => Status == PolyhedronStatus.Solid && Body is not null;
}
