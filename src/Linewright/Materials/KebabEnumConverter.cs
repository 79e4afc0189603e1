using System.Text.Json;
using System.Text.Json.Serialization;

namespace Linewright.Materials;

/// <summary>Writes a closed set of choices as the files spell them: lower case, hyphens; numbers are refused.</summary>
public sealed class KebabEnumConverter<TEnum>() : JsonStringEnumConverter<TEnum>(JsonNamingPolicy.KebabCaseLower, allowIntegerValues: false)
    where TEnum : struct, Enum;
