namespace Linewright.Staging;

/// <summary>What a picture shows.</summary>
public enum SceneKind
{
    /// <summary>The open line along an S on the ground, box and tongue at its ends.</summary>
    Draped,

    /// <summary>The closed line at rest on its side.</summary>
    Closed,

    /// <summary>The clasp open: tongue drawn out before its box, with the links next to them.</summary>
    Clasp,

    /// <summary>One link with its stone.</summary>
    Link,

    /// <summary>The closed line pulled straight.</summary>
    Flat,
}
