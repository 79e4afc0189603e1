using System.Text.Json.Serialization;

namespace Linewright.Materials;

/// <summary>State of an alloy after working: a spring wants it hard, a casting or a soldered part is near annealed.</summary>
[JsonConverter(typeof(KebabEnumConverter<Temper>))]
public enum Temper
{
    Annealed,
    Hard,
}
