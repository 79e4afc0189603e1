using System.Text.Json.Serialization;

namespace Linewright.Materials;

/// <summary>The metal that an alloy is named after; casting habits go by it.</summary>
[JsonConverter(typeof(KebabEnumConverter<MetalFamily>))]
public enum MetalFamily
{
    Gold,
    Silver,
    Platinum,
    Palladium,
    Brass,
    Bronze,
}
