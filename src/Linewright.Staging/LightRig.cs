using System.Collections.Immutable;
using Linewright.Pictures.Scenes;
using Linewright.Pictures.Spectra;
using Linewright.Solids.Space;

namespace Linewright.Staging;

/// <summary>The light of the table: built round what is pictured, in its size, so that a link and a whole line are lit alike.</summary>
/// <remarks>
/// A large soft strip overhead and a little behind makes the tables of the stones and the tops of the claws read; a key from
/// the front left models; dark flags between them give metal its edges and stones the dark that their bright
/// facets need; a few narrow bright strips break into colours in the stones. What comes from everywhere is kept low: it
/// would fill the shadows and lay a grey over metal and stones. All of it is near daylight, so that paper stays white and an
/// alloy shows its own colour. Everything is scaled so that level white paper shows as it is. Proportions chosen by eye.
/// </remarks>
internal static class LightRig
{
    // What level ground receives, against a sheet that is fully lit. Chosen by eye: paper of 0.76 keeps a tone.
    private const double GroundLight = 0.95;

    /// <summary>Lights and surroundings for a subject.</summary>
    /// <param name="centre">Middle of the subject, mm.</param>
    /// <param name="size">Its radius, mm.</param>
    /// <param name="forward">Direction of the view.</param>
    /// <param name="isWarm">True for yellow and rose metals: daylight alone shows their colour; white ones look cleaner with a cooler top.</param>
    /// <param name="isSeen">False for a transparent ground.</param>
    public static (ImmutableArray<AreaLight> Lights, Surroundings Surroundings) Of(Vec3 centre, double size, Vec3 forward, bool isWarm, bool isSeen)
    {
        // Seen from the camera: away is level into the picture, right is to its right.
        var away = (forward with { Z = 0 }).Normalised();
        var right = away.Cross(Vec3.UnitZ);
        Vec3 At(double toRight, double toBack, double up) => centre + (right * toRight + away * toBack + Vec3.UnitZ * up) * size;
        Vec3 Way(double toRight, double toBack, double up) => (right * toRight + away * toBack + Vec3.UnitZ * up).Normalised();
        double key = 6500, top = isWarm ? 6500 : 6700;
        ImmutableArray<AreaLight> lights =
        [
            // The strip: from 35 to 75 degrees over the back, where level metal and tables mirror it.
            AreaLight.Facing(At(0.3, 2.6, 3.2), centre, 6.0 * size, 2.0 * size, top, 2.6),
            AreaLight.Facing(At(-3.4, -1.8, 2.0), centre, 2.4 * size, 1.8 * size, key, 4.2),
            AreaLight.Facing(At(3.6, -1.2, 1.5), centre, 0.7 * size, 2.0 * size, top, 2.4),

            // Over the camera: stones that look at it send its light straight back.
            AreaLight.Facing(At(0.5, -3.4, 2.2), centre, 2.0 * size, 0.7 * size, top, 2.2),
        ];
        ImmutableArray<LightStrip> strips =
        [
            // Fire: narrow, bright, all round above the horizon.
            new(Way(-0.75, 0.75, 0.9), Way(0.7, 0.7, 0), 0.28, 0.03, 0.3, 18),
            new(Way(0.9, 0.5, 0.75), Way(0, 0, 1), 0.3, 0.03, 0.3, 18),
            new(Way(0.55, -0.75, 1.1), Way(1, 0.4, 0), 0.2, 0.03, 0.3, 18),
            new(Way(-0.4, -0.9, 0.5), Way(0, 0, 1), 0.25, 0.03, 0.3, 18),
            new(Way(-0.2, 0.0, 1.7), Way(1, 0, 0), 0.16, 0.03, 0.3, 16),

            // Flags: the photographer's own dark, and a band under the strip that gives level metal its edge.
            new(Way(-0.15, -1, 0.4), Way(1, 0, 0.2), 0.16, 0.09, 0.4, -1),
            new(Way(-0.9, 0.5, 0.3), Way(0, 0, 1), 0.4, 0.14, 0.4, -1),
            new(Way(0.2, 1, 0.3), Way(1, 0, 0), 0.6, 0.14, 0.6, -1),
        ];
        var around = new Surroundings(0.2, 0.14, 0.04, strips, Illuminant.OfTemperature(top), isSeen);
        var lit = GroundIrradiance.Of(centre with { Z = 0 }, lights, around);
        var scale = GroundLight / lit;
        return (
            [.. lights.Select(light => light with { Radiance = light.Radiance * scale })],
            around with
            {
                Zenith = around.Zenith * scale,
                Horizon = around.Horizon * scale,
                Nadir = around.Nadir * scale,
                Strips = [.. strips.Select(strip => strip with { Radiance = strip.Radiance * scale })],
            });
    }
}
