using System.Text.Json.Serialization;
using Linewright.Materials;

namespace Linewright.Quote;

/// <summary>An operation that every line bracelet goes through; a quote wants a price for each.</summary>
[JsonConverter(typeof(KebabEnumConverter<Operation>))]
public enum Operation
{
    /// <summary>Talking the brief over, drawing, preparing the files.</summary>
    Design,

    /// <summary>Cutting supports from the patterns and washing them.</summary>
    PatternCleaning,

    /// <summary>Cutting sprues, tumbling, filing the gates.</summary>
    SprueCutting,

    /// <summary>Polishing what cannot be reached once the line is linked and set.</summary>
    PrePolishing,

    /// <summary>Linking two links, or a link and the clasp: closing and welding the eye, or driving and riveting the pin.</summary>
    Joint,

    /// <summary>Fitting the tongue to its box, the catch, the push and the safety.</summary>
    Clasp,

    /// <summary>Polishing the finished line.</summary>
    Polishing,

    /// <summary>Masking and dipping; only in plated pieces.</summary>
    Plating,

    /// <summary>Trying every joint, stone and the clasp; cleaning and packing.</summary>
    Inspection,
}
