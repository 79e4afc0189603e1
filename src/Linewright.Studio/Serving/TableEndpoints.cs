using System.Text.Json;
using Linewright.Brief;
using Linewright.Quote;
using Linewright.Studio.Wire;
using Microsoft.AspNetCore.Builder;
using Microsoft.AspNetCore.Http;
using Microsoft.AspNetCore.Routing;

namespace Linewright.Studio.Serving;

/// <summary>What does not change: the brief's fields, its schema, the demo piece.</summary>
internal static class TableEndpoints
{
    private static readonly JsonSerializerOptions CamelCase = new() { PropertyNamingPolicy = JsonNamingPolicy.CamelCase };

    private static readonly Lazy<byte[]> Fields = new(() => JsonSerializer.SerializeToUtf8Bytes(FieldTable.Build(), CamelCase));

    /// <summary>Adds the doors.</summary>
    public static void Map(IEndpointRouteBuilder api)
    {
        api.MapGet("/fields", () => Results.Bytes(Fields.Value, "application/json"))
            .WithSummary("The brief's fields: group, label, unit, range, default, help; alloys and species by name.").Produces<object>();
        api.MapGet("/schema", () =>
        {
            using var text = new MemoryStream();
            BriefSchema.Write(text);
            return Results.Bytes(text.ToArray(), "application/schema+json");
        }).WithSummary("The JSON Schema of a brief, as the command schema prints it.").Produces<object>(contentType: "application/schema+json");
        api.MapGet("/schema/prices", () =>
        {
            using var text = new MemoryStream();
            PriceSchema.Write(text);
            return Results.Bytes(text.ToArray(), "application/schema+json");
        }).WithSummary("The JSON Schema of a price list, as the command schema --prices prints it.").Produces<object>(contentType: "application/schema+json");
        api.MapGet("/demo/prices", () => Results.Stream(typeof(TableEndpoints).Assembly.GetManifestResourceStream("demo-prices.json")!, "application/json"))
            .WithSummary("A price list to try with. All its prices are invented.").Produces<object>();
        api.MapGet("/demo", () => Results.Stream(typeof(TableEndpoints).Assembly.GetManifestResourceStream("demo.json")!, "application/json"))
            .WithSummary("The demo piece's brief.").Produces<object>();
    }
}
