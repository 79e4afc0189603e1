using System.Text.Json.Serialization;
using Linewright.Materials;

namespace Linewright.Brief;

/// <summary>How the line closes.</summary>
[JsonConverter(typeof(KebabEnumConverter<ClaspKind>))]
public enum ClaspKind
{
    /// <summary>A box that a folded spring tongue enters.</summary>
    Box,
}
