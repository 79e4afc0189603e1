namespace Linewright.Materials;

/// <summary>What jewellery may release to skin or contain, by law in the European Union.</summary>
public static class SkinContactLimits
{
    /// <summary>Nickel release of articles in direct and prolonged skin contact, micrograms per cm2 and week.</summary>
    /// <remarks>Source: REACH (EC) 1907/2006, Annex XVII entry 27; tested by EN 1811.</remarks>
    public const double NickelReleaseUgPerCm2Week = 0.5;

    /// <summary>Nickel release of posts in pierced parts of the body, micrograms per cm2 and week.</summary>
    /// <remarks>Source: REACH (EC) 1907/2006, Annex XVII entry 27.</remarks>
    public const double NickelReleasePiercingUgPerCm2Week = 0.2;

    /// <summary>Cadmium in a metal part, mass %. Source: REACH (EC) 1907/2006, Annex XVII entry 23.</summary>
    public const double CadmiumPercent = 0.01;

    /// <summary>Lead in any part, mass %. Source: REACH (EC) 1907/2006, Annex XVII entry 63.</summary>
    public const double LeadPercent = 0.05;
}
