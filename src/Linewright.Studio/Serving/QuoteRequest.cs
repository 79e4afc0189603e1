using System.Text;
using System.Text.Json;
using Linewright.Quote;
using Linewright.Studio.Pieces;
using Microsoft.AspNetCore.Http;

namespace Linewright.Studio.Serving;

/// <summary>What a quote is asked of: a brief and a price list, as they stand in their files, so that faults are found at their places.</summary>
/// <param name="Brief">Text of the brief, UTF-8.</param>
/// <param name="Prices">Text of the price list, UTF-8.</param>
/// <param name="Grade">The stones' grade; null where the list has one only.</param>
/// <param name="Grid">What to vary; empty for a single quote.</param>
/// <param name="IsChecked">True to run the checks on each cell of a grid.</param>
internal sealed record QuoteRequest(ReadOnlyMemory<byte> Brief, ReadOnlyMemory<byte> Prices, string? Grade, IReadOnlyList<GridAxis> Grid, bool IsChecked)
{
    /// <summary>Reads a body.</summary>
    /// <exception cref="BadHttpRequestException">It is no such request.</exception>
    public static QuoteRequest Read(byte[] body)
    {
        try
        {
            using var json = JsonDocument.Parse(body);
            if (json.RootElement.ValueKind != JsonValueKind.Object)
            {
                throw new BadHttpRequestException("""expected { "brief": ..., "prices": ... }""");
            }

            if (json.RootElement.EnumerateObject().Select(field => field.Name).FirstOrDefault(name => name is not ("brief" or "prices" or "grade" or "grid" or "check")) is { } unknown)
            {
                throw new BadHttpRequestException($"{unknown}: not a field of this request, expected brief, prices, grade, grid or check");
            }

            return new QuoteRequest(
                Text(json.RootElement, "brief"),
                Text(json.RootElement, "prices"),
                json.RootElement.TryGetProperty("grade", out var grade) && grade.ValueKind != JsonValueKind.Null ? Word(grade, "grade") : null,
                json.RootElement.TryGetProperty("grid", out var grid) && grid.ValueKind != JsonValueKind.Null ? Axes(grid) : [],
                json.RootElement.TryGetProperty("check", out var check) && check.ValueKind switch
                {
                    JsonValueKind.True => true,
                    JsonValueKind.False or JsonValueKind.Null => false,
                    _ => throw new BadHttpRequestException("check: expected true or false"),
                });
        }
        catch (JsonException slip)
        {
            throw new BadHttpRequestException(FormattableString.Invariant($"the body is no JSON, line {slip.LineNumber + 1}"), slip);
        }
    }

    /// <summary>True where a body asks as for a quote, and is no brief by itself: no brief has a field of this name.</summary>
    public static bool IsOne(byte[] body)
    {
        try
        {
            using var json = JsonDocument.Parse(body);
            return json.RootElement.ValueKind == JsonValueKind.Object && json.RootElement.TryGetProperty("brief", out _);
        }
        catch (JsonException)
        {
            return false;
        }
    }

    /// <summary>The price list.</summary>
    /// <exception cref="PricesRefusedException">It has faults.</exception>
    public PriceList List()
    {
        var read = PriceListReader.Read(Prices, "prices");
        return read.List ?? throw PricesRefusedException.Of(read.Faults);
    }

    private static byte[] Text(JsonElement root, string name) => !root.TryGetProperty(name, out var value)
        ? throw new BadHttpRequestException($"{name}: nothing there, expected an object or the file's text")
        : Encoding.UTF8.GetBytes(value.ValueKind == JsonValueKind.String ? value.GetString()! : value.GetRawText());

    private static List<GridAxis> Axes(JsonElement grid)
    {
        if (grid.ValueKind != JsonValueKind.Object)
        {
            throw new BadHttpRequestException("""grid: expected fields with lists of values, such as { "stone.diameter_mm": [2.5, 3] }""");
        }

        return
        [
            .. grid.EnumerateObject().Select(axis => axis.Value.ValueKind == JsonValueKind.Array && axis.Value.GetArrayLength() > 0
                ? new GridAxis(axis.Name, [.. axis.Value.EnumerateArray().Select(value => value.ValueKind == JsonValueKind.Number ? value.GetRawText() : Word(value, $"grid.{axis.Name}"))])
                : throw new BadHttpRequestException($"grid.{axis.Name}: expected a list of at least one value")),
        ];
    }

    private static string Word(JsonElement value, string name) => value.ValueKind == JsonValueKind.String ? value.GetString()! : throw new BadHttpRequestException($"{name}: expected text");
}
