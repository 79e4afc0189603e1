namespace Linewright.Pictures.Scenes;

/// <summary>What the piece lies on; all made by rule, no picture is loaded.</summary>
public enum GroundKind
{
    /// <summary>Heavy uncoated paper: diffuse, a faint tooth.</summary>
    Paper,

    /// <summary>Honed stone with grains: diffuse under a soft gloss.</summary>
    Stone,

    /// <summary>Plain woven cloth: threads over and under.</summary>
    Cloth,

    /// <summary>Fired clay without glaze: diffuse, uneven in tone and level.</summary>
    Clay,

    /// <summary>Even, diffuse, without any pattern.</summary>
    Plain,
}
