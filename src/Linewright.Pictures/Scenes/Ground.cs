using Linewright.Solids.Space;

namespace Linewright.Pictures.Scenes;

/// <summary>An endless level ground.</summary>
/// <param name="Kind">Its surface.</param>
/// <param name="Height">z of the plane, mm.</param>
/// <param name="Red">Share of red light thrown back, 0 to 1, linear.</param>
/// <param name="Green">Share of green light thrown back, 0 to 1, linear.</param>
/// <param name="Blue">Share of blue light thrown back, 0 to 1, linear.</param>
/// <param name="Grain">Size of its pattern, mm: a thread's pitch, a grain of stone.</param>
/// <param name="Transparent">Seen directly it is glass: only the shadow on it is kept, in the alpha. Stones and metal still see it.</param>
public sealed record Ground(GroundKind Kind, double Height, double Red, double Green, double Blue, double Grain = 0.5, bool Transparent = false)
{
    /// <summary>A ground in its usual tone.</summary>
    public static Ground Of(GroundKind kind, double height) => kind switch
    {
        // Assumed: tones chosen by eye so that white metal and yellow metal both stand off.
        GroundKind.Paper => new Ground(kind, height, 0.78, 0.76, 0.72, 0.15),
        GroundKind.Stone => new Ground(kind, height, 0.085, 0.09, 0.1, 0.6),
        GroundKind.Cloth => new Ground(kind, height, 0.055, 0.065, 0.1, 0.45),
        GroundKind.Clay => new Ground(kind, height, 0.46, 0.27, 0.19, 2.5),
        _ => new Ground(GroundKind.Plain, height, 0.5, 0.5, 0.5),
    };

    internal void Check()
    {
        Guard.Finite(Height);
        Guard.InRange(Red, 0, 1);
        Guard.InRange(Green, 0, 1);
        Guard.InRange(Blue, 0, 1);
        Guard.Positive(Grain);
    }
}
