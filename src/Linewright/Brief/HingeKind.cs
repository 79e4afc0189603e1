using System.Text.Json.Serialization;
using Linewright.Materials;

namespace Linewright.Brief;

/// <summary>How one link turns on the next.</summary>
[JsonConverter(typeof(KebabEnumConverter<HingeKind>))]
public enum HingeKind
{
    /// <summary>The parts decide: an eye over a bar where there is room, pinned knuckles otherwise.</summary>
    Auto,

    /// <summary>The bar is cast with its link; the neighbour's eye is closed over it and welded.</summary>
    EyeOverBar,

    /// <summary>A knuckle between two cheeks with a drawn wire through them.</summary>
    PinnedKnuckles,
}
