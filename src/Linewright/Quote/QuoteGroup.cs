using System.Text.Json.Serialization;
using Linewright.Materials;

namespace Linewright.Quote;

/// <summary>What a line of a quote pays for; the order is that of the quote.</summary>
[JsonConverter(typeof(KebabEnumConverter<QuoteGroup>))]
public enum QuoteGroup
{
    /// <summary>Metal melted, less what is sent back to the refiner.</summary>
    Metal,

    /// <summary>Patterns and casting.</summary>
    Casting,

    /// <summary>Stones, spares included.</summary>
    Stones,

    /// <summary>Setting them.</summary>
    Setting,

    /// <summary>Operations by the hour.</summary>
    Labour,

    /// <summary>What is bought ready.</summary>
    Findings,

    /// <summary>Plating.</summary>
    Plating,

    /// <summary>Assay and hallmark.</summary>
    Assay,

    /// <summary>Packing and the like.</summary>
    Other,

    /// <summary>Overhead on labour and setting.</summary>
    Overhead,

    /// <summary>Markup on cost.</summary>
    Markup,

    /// <summary>Tax on the price.</summary>
    Tax,
}
