namespace Linewright.Paper;

/// <summary>Which part of a line of text stands at its place.</summary>
public enum Align
{
    /// <summary>Its beginning.</summary>
    Left,

    /// <summary>Its middle.</summary>
    Centre,

    /// <summary>Its end.</summary>
    Right,
}
