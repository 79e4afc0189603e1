namespace Linewright.Brief;

/// <summary>What a field of the brief holds.</summary>
public enum FieldKind
{
    /// <summary>Free text of at least one character, without control characters.</summary>
    Text,

    /// <summary>One of a closed list of words.</summary>
    Choice,

    /// <summary>A number within a range, in the unit that the field's name carries.</summary>
    Number,

    /// <summary>true or false.</summary>
    Flag,
}
