using System.Text.Json.Serialization;
using Linewright.Materials;

namespace Linewright.Tolerance;

/// <summary>What makes one piece differ from the next.</summary>
[JsonConverter(typeof(KebabEnumConverter<ToleranceSource>))]
public enum ToleranceSource
{
    /// <summary>The scale of a tree, in which all its parts share.</summary>
    TreeScale,

    /// <summary>All faces of a tree standing out or in alike.</summary>
    TreeFaces,

    /// <summary>Each size as cast, on its own.</summary>
    Sizes,

    /// <summary>The clearance of each joint as the bench leaves it.</summary>
    JointFit,

    /// <summary>What finishing takes from each face.</summary>
    Finishing,

    /// <summary>The strip of the tongue as rolled, folded and set.</summary>
    TongueFit,
}
