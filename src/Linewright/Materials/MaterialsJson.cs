using System.Text.Json.Serialization;

namespace Linewright.Materials;

/// <summary>How the data files are read: snake_case names, nothing unknown, nothing missing.</summary>
[JsonSourceGenerationOptions(
    PropertyNamingPolicy = JsonKnownNamingPolicy.SnakeCaseLower,
    UnmappedMemberHandling = JsonUnmappedMemberHandling.Disallow,
    RespectNullableAnnotations = true,
    RespectRequiredConstructorParameters = true)]
[JsonSerializable(typeof(Element[]))]
[JsonSerializable(typeof(Alloy[]))]
[JsonSerializable(typeof(Species[]))]
[JsonSerializable(typeof(ProcessDefaults[]))]
[JsonSerializable(typeof(Currency[]))]
[JsonSerializable(typeof(SieveSize[]))]
[JsonSerializable(typeof(ProcessStep[]))]
[JsonSerializable(typeof(ProcessRoute[]))]
[JsonSerializable(typeof(ProcessFit[]))]
internal sealed partial class MaterialsJson : JsonSerializerContext;
