namespace Linewright.Solids.Meshing;

/// <summary>How a meshing ended.</summary>
public enum MeshStatus
{
    /// <summary>Closed, oriented, and within the deviation asked for.</summary>
    Meshed,

    /// <summary>The solid has no surface that the grid can see: nothing in it, or only features below a cell.</summary>
    Empty,

    /// <summary>The solid has no finite bounds, as a half-space or a complement.</summary>
    Unbounded,

    /// <summary>The surface passes through more blocks than the settings allow.</summary>
    TooLarge,

    /// <summary>
    /// The surface leaves the solid's stated bounds, or its distance overstates, so that the search missed part of it.
    /// </summary>
    Leaks,

    /// <summary>A mesh was made, but not within the deviation, with the cell halved as often as the settings allow.</summary>
    DeviationNotReached,

    /// <summary>A mesh was made, but some of its triangles meet where they should not.</summary>
    SelfIntersecting,
}
