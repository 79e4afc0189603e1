using System.Text.Json.Serialization;
using Linewright.Materials;

namespace Linewright.Brief;

/// <summary>The cut of the stones.</summary>
[JsonConverter(typeof(KebabEnumConverter<StoneCut>))]
public enum StoneCut
{
    /// <summary>Round brilliant of 57 facets, 58 with a culet.</summary>
    Round,
}
