namespace Linewright.Staging;

/// <summary>What the piece lies on.</summary>
public enum StageGround
{
    /// <summary>Heavy white paper.</summary>
    Paper,

    /// <summary>Dark honed stone.</summary>
    Stone,

    /// <summary>Dark woven cloth.</summary>
    Cloth,

    /// <summary>Fired clay.</summary>
    Clay,

    /// <summary>An even grey without any pattern.</summary>
    None,
}
