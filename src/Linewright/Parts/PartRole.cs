namespace Linewright.Parts;

/// <summary>What a part does in the line.</summary>
public enum PartRole
{
    /// <summary>A setting with its eye and bar.</summary>
    Link,

    /// <summary>The clasp's box.</summary>
    Box,

    /// <summary>The clasp's tongue on its carrier.</summary>
    Tongue,

    /// <summary>The figure-of-eight at the clasp's side.</summary>
    Safety,

    /// <summary>The drawn wire of a pinned joint.</summary>
    Pin,
}
