namespace Linewright.Assembly;

/// <summary>A rigid piece of a line that lies open or closed.</summary>
public enum RestingKind
{
    /// <summary>A link with its stone.</summary>
    Link,

    /// <summary>The clasp closed: box, tongue and safety as one.</summary>
    Clasp,

    /// <summary>The box alone, at the end of an open line, the safety hanging from its post.</summary>
    Box,

    /// <summary>The tongue alone, at the beginning of an open line.</summary>
    Tongue,
}
