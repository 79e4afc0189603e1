namespace Linewright.Solids.Outlines;

/// <summary>Why there is a line in a view.</summary>
public enum OutlineKind
{
    /// <summary>The surface has an edge there.</summary>
    Edge,

    /// <summary>A smooth surface turns away from the eye there.</summary>
    Contour,

    /// <summary>The plane of a section cuts the body there.</summary>
    Cut,
}
