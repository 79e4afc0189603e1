using Microsoft.AspNetCore.OpenApi;

namespace Linewright.Studio.Serving;

/// <summary>What the OpenAPI document says about the whole interface.</summary>
internal static class OpenApiWords
{
    /// <summary>Title and description.</summary>
    public static void Configure(OpenApiOptions options) => options.AddDocumentTransformer((document, _, _) =>
    {
        document.Info.Title = "Linewright studio";
        document.Info.Version = "1";
        document.Info.Description = "From a brief to a solved, measured and castable line. Lengths in mm, masses in g, stones in ct, angles in degrees. Errors are problem+json.";
        return Task.CompletedTask;
    });
}
