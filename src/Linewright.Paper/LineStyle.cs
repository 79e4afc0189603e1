namespace Linewright.Paper;

/// <summary>How a line is broken up. Lengths follow its width, so that a style reads the same at every width.</summary>
public enum LineStyle
{
    /// <summary>Continuous: outlines, dimensions, hatching.</summary>
    Solid,

    /// <summary>Dashed: edges behind others.</summary>
    Dashed,

    /// <summary>Long dash and dot: axes, where a section is cut.</summary>
    Chain,
}
