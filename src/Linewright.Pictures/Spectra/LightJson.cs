using System.Text.Json.Serialization;

namespace Linewright.Pictures.Spectra;

/// <summary>How the tables are read: snake case, every field known.</summary>
[JsonSourceGenerationOptions(
    PropertyNamingPolicy = JsonKnownNamingPolicy.SnakeCaseLower, UnmappedMemberHandling = JsonUnmappedMemberHandling.Disallow)]
[JsonSerializable(typeof(List<LightTables.CurveRow>))]
[JsonSerializable(typeof(List<LightTables.MetalRow>))]
[JsonSerializable(typeof(List<LightTables.StoneRow>))]
internal sealed partial class LightJson : JsonSerializerContext;
