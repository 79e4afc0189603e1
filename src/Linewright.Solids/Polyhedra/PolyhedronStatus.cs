namespace Linewright.Solids.Polyhedra;

/// <summary>What became of a set of half-spaces.</summary>
public enum PolyhedronStatus
{
    /// <summary>A closed body with an inside.</summary>
    Solid,

    /// <summary>No point, or only a flat piece, lies inside all half-spaces.</summary>
    Empty,

    /// <summary>The half-spaces leave a way out to infinity, or farther than a thousand times the largest plane offset.</summary>
    Unbounded,

    /// <summary>The planes lie so badly that rounding left no closed surface; nothing is returned rather than something wrong.</summary>
    Broken,
}
