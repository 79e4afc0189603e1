using System.Text.Json.Serialization;
using Linewright.Materials;

namespace Linewright.Quote;

/// <summary>What the minutes of an operation, or the pieces of a finding, are counted by.</summary>
[JsonConverter(typeof(KebabEnumConverter<CountOf>))]
public enum CountOf
{
    /// <summary>The whole bracelet: one.</summary>
    Piece,

    /// <summary>Stone-set links.</summary>
    Link,

    /// <summary>Hinges, those to the clasp included: one more than the links.</summary>
    Joint,

    /// <summary>Stones to be set.</summary>
    Stone,

    /// <summary>Cast parts.</summary>
    Casting,

    /// <summary>Drawn pins; none where eyes close over bars.</summary>
    Pin,
}
