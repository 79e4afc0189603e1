namespace Linewright.Stones;

/// <summary>What a facet of a brilliant is called.</summary>
public enum FacetKind
{
    /// <summary>The flat top, one.</summary>
    Table,

    /// <summary>Between table and bezel mains, eight.</summary>
    Star,

    /// <summary>The kites of the crown, eight.</summary>
    BezelMain,

    /// <summary>Crown facets along the girdle, sixteen.</summary>
    UpperHalf,

    /// <summary>The rim; as many flats as the model was given.</summary>
    Girdle,

    /// <summary>The long facets of the pavilion, eight.</summary>
    PavilionMain,

    /// <summary>Pavilion facets along the girdle, sixteen.</summary>
    LowerHalf,

    /// <summary>The small flat at the point, none or one.</summary>
    Culet,
}
