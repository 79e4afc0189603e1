namespace Linewright.Studio.Pieces;

/// <summary>The body colour of a species for the view: what is left of white light after a millimetre, linear sRGB.</summary>
/// <remarks>Assumed: how stones of fine colour in these sizes look to the eye; for pictures, never for identification or grading.</remarks>
public static class StoneTints
{
    private static readonly Dictionary<string, (float Red, float Green, float Blue)> PerMm = new(StringComparer.Ordinal)
    {
        ["ruby"] = (0.92f, 0.30f, 0.40f),
        ["sapphire"] = (0.34f, 0.45f, 0.93f),
        ["emerald"] = (0.35f, 0.90f, 0.58f),
        ["aquamarine"] = (0.80f, 0.96f, 0.99f),
        ["morganite"] = (0.99f, 0.86f, 0.86f),
        ["spinel"] = (0.95f, 0.42f, 0.50f),
        ["garnet-pyrope"] = (0.82f, 0.22f, 0.22f),
        ["garnet-almandine"] = (0.80f, 0.24f, 0.30f),
        ["rhodolite"] = (0.88f, 0.40f, 0.56f),
        ["spessartine"] = (0.98f, 0.62f, 0.24f),
        ["tsavorite"] = (0.40f, 0.92f, 0.48f),
        ["hessonite"] = (0.95f, 0.62f, 0.34f),
        ["demantoid"] = (0.60f, 0.94f, 0.42f),
        ["topaz"] = (0.88f, 0.96f, 0.99f),
        ["tourmaline"] = (0.46f, 0.88f, 0.66f),
        ["peridot"] = (0.74f, 0.94f, 0.40f),
        ["amethyst"] = (0.76f, 0.56f, 0.94f),
        ["citrine"] = (0.98f, 0.86f, 0.46f),
        ["tanzanite"] = (0.52f, 0.52f, 0.95f),
        ["alexandrite"] = (0.50f, 0.74f, 0.70f),
    };

    /// <summary>The share of each primary left after 1 mm; nearly all where the stone is clear.</summary>
    public static (float Red, float Green, float Blue) Of(string species) => PerMm.GetValueOrDefault(species, (0.994f, 0.995f, 0.997f));
}
