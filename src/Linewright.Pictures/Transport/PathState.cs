using Linewright.Pictures.Rays;

namespace Linewright.Pictures.Transport;

/// <summary>A path on its way from the eye into the scene.</summary>
internal struct PathState
{
    public Float3 Origin;
    public Float3 Direction;

    /// <summary>Share of the light found next that arrives at the eye.</summary>
    public Four Carried;

    /// <summary>Light that arrived so far.</summary>
    public Four Gathered;

    /// <summary>Density over solid angle of the last turn; 0 after mirrors and clear borders, where no light can be aimed at.</summary>
    public float Density;

    /// <summary>The convex body just left, -1 for none.</summary>
    public int LeaveOut;

    /// <summary>Bin of the hero wavelength.</summary>
    public int Bin;

    /// <summary>1 once the path met a surface that scatters.</summary>
    public int Scattered;

    /// <summary>1 once it met a stone after that: such paths make caustics.</summary>
    public int Caustic;

    /// <summary>Adds light of one luminance found at the end of the path.</summary>
    public void Gather(Four light, float clamp)
    {
        var part = Carried * light;
        if (Caustic != 0 && clamp > 0)
        {
            // Light of luminance 1 has a curve near 1 / 107 a nm; the clamp is told in luminance.
            part = Four.Least(part, clamp * Clamping);
        }

        Gathered += part;
    }

    /// <summary>Height of the curve of an even spectrum of luminance 1. Source: ISO/CIE 11664-1, integral of y-bar, 106.857 nm.</summary>
    private const float Clamping = 1 / 106.857f;
}
