using System.Text.Json.Serialization;

namespace Linewright.Making;

/// <summary>How the records of the report become JSON; made at build time.</summary>
[JsonSourceGenerationOptions(
    PropertyNamingPolicy = JsonKnownNamingPolicy.SnakeCaseLower,
    DefaultIgnoreCondition = JsonIgnoreCondition.WhenWritingNull,
    WriteIndented = true,
    IndentSize = 2,
    NewLine = "\n",
    Converters = [typeof(StableNumber)])]
[JsonSerializable(typeof(Report))]
internal sealed partial class ReportShapes : JsonSerializerContext;
