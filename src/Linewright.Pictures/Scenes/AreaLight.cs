using Linewright.Pictures.Spectra;
using Linewright.Solids.Space;

namespace Linewright.Pictures.Scenes;

/// <summary>A flat, evenly lit rectangle: a softbox, a lamp's window. It shines to the side of its normal only.</summary>
/// <remarks>
/// The normal is the outer product of the two half edges. Small, very bright lights make fire and also make caustics
/// that take long to settle: radiances up to some 30 times the surroundings' are quick, hundreds are slow.
/// </remarks>
/// <param name="Centre">mm.</param>
/// <param name="HalfEdgeU">From the centre to the middle of one side, mm.</param>
/// <param name="HalfEdgeV">From the centre to the middle of a neighbouring side, at a right angle to the other, mm.</param>
/// <param name="Colour">Spectrum; only its shape counts, it is scaled to luminance 1.</param>
/// <param name="Radiance">Luminance as a multiple of the picture's white.</param>
public sealed record AreaLight(Vec3 Centre, Vec3 HalfEdgeU, Vec3 HalfEdgeV, Spectrum Colour, double Radiance)
{
    /// <summary>A rectangle that faces a point, its long side level.</summary>
    /// <param name="centre">mm.</param>
    /// <param name="towards">Point that it faces, mm.</param>
    /// <param name="width">Level side, mm.</param>
    /// <param name="height">Other side, mm.</param>
    /// <param name="kelvin">Colour temperature, 1,000 to 25,000.</param>
    /// <param name="radiance">Luminance as a multiple of the picture's white.</param>
    public static AreaLight Facing(Vec3 centre, Vec3 towards, double width, double height, double kelvin, double radiance)
    {
        Guard.Positive(width);
        Guard.Positive(height);
        var normal = (towards - centre).Normalised();
        var side = Math.Abs(normal.Z) > 0.99 ? Vec3.UnitY : Vec3.UnitZ;
        var u = side.Cross(normal).Normalised();
        var v = normal.Cross(u);
        return new AreaLight(centre, u * (width / 2), v * (height / 2), Illuminant.OfTemperature(kelvin), radiance);
    }

    /// <summary>Unit direction in which it shines.</summary>
    public Vec3 Normal => HalfEdgeU.Cross(HalfEdgeV).Normalised();

    /// <summary>mm2.</summary>
    public double Area => 4 * HalfEdgeU.Cross(HalfEdgeV).Length;

    internal void Check()
    {
        Guard.Positive(Area);
        Guard.InRange(Math.Abs(HalfEdgeU.Normalised().Dot(HalfEdgeV.Normalised())), 0, 1e-6);
        Guard.InRange(Radiance, 0, 1e6);
    }
}
