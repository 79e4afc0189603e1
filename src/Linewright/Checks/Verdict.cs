using System.Text.Json.Serialization;
using Linewright.Materials;

namespace Linewright.Checks;

/// <summary>What a check concludes.</summary>
[JsonConverter(typeof(KebabEnumConverter<Verdict>))]
public enum Verdict
{
    /// <summary>Within the limit.</summary>
    Pass,

    /// <summary>Can be made, but somebody must know.</summary>
    Caution,

    /// <summary>Must not be made like this.</summary>
    Fail,
}
