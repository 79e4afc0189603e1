namespace Linewright.Quote;

/// <summary>What a field of a price list holds.</summary>
internal enum PriceKind
{
    /// <summary>Text of at least one character.</summary>
    Text,

    /// <summary>A day, written 2026-03-02.</summary>
    Day,

    /// <summary>One of a closed list of words.</summary>
    Choice,

    /// <summary>A decimal number, read to its last digit.</summary>
    Number,

    /// <summary>Fields in braces.</summary>
    Group,

    /// <summary>A list in brackets of groups that are all alike.</summary>
    List,
}
