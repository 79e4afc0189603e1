using Linewright.Pictures.Rays;

namespace Linewright.Pictures.Transport;

/// <summary>A path at the ground: light aimed at, and the way on.</summary>
internal static class GroundScatter
{
    /// <summary>Goes on from a hit.</summary>
    /// <returns>False where the path ends.</returns>
    public static bool Turn<TWorld>(
        ref TWorld world, in SceneRecord scene, float distance, ref PathState path, ref SampleStream numbers, out Float3 shown, out float tone)
        where TWorld : struct, IWorld
    {
        var ground = scene.Ground;
        var p = path.Origin + path.Direction * distance;
        p.Z = ground.Height;
        var back = path.Direction * -1f;
        GroundPattern.At(ground.Kind, p.X / ground.Grain, p.Y / ground.Grain, out tone, out var slopeX, out var slopeY);
        var n = Float3.Normalise(new Float3(-slopeX, -slopeY, 1));
        if (Float3.Dot(n, back) < 0.05f)
        {
            n = new Float3(0, 0, 1);
        }

        shown = n;
        Float3.Frame(n, out var x, out var y);
        var wo = new Float3(Float3.Dot(x, back), Float3.Dot(y, back), MathF.Max(Float3.Dot(n, back), 1e-4f));
        var surface = Surface(ref world, ground, wo);
        var albedo = Four.Least(Curves.Read(ref world, ground.Column, path.Bin) * tone, 1f);
        var carried = path.Carried;

        if (Lamps.Aim(ref world, scene, p, path.Bin, numbers.Next(ref world), numbers.Next(ref world), numbers.Next(ref world), out var to, out var far, out var density, out var light)
            && to.Z > 0)
        {
            var wi = new Float3(Float3.Dot(x, to), Float3.Dot(y, to), Float3.Dot(n, to));
            if (wi.Z > 0 && !Lamps.IsCutOff(ref world, scene, p, to, far))
            {
                var body = surface.Evaluate(ref world, wo, wi, out var coat, out var other);
                path.Carried = carried * (albedo * body + new Four(coat)) * Lamps.Aimed(scene, density, other);
                path.Gather(light, scene.Clamp);
            }
        }

        var on = surface.Choose(wo, numbers.Next(ref world), numbers.Next(ref world), numbers.Next(ref world));
        var d = x * on.X + y * on.Y + n * on.Z;
        if (on.Z <= 1e-5f || d.Z <= 1e-5f)
        {
            return false;
        }

        var scattered = surface.Evaluate(ref world, wo, on, out var coated, out var chance);
        path.Carried = carried * (albedo * scattered + new Four(coated)) * (1 / MathF.Max(chance, 1e-9f));
        path.Density = chance;
        path.Direction = d;
        path.Origin = p;
        path.LeaveOut = -1;
        path.Scattered = 1;
        return true;
    }

    /// <summary>For a transparent ground: how much of the light aimed at is cut off by what stands there.</summary>
    public static float Shadow<TWorld>(ref TWorld world, in SceneRecord scene, Float3 p, int bin, ref SampleStream numbers)
        where TWorld : struct, IWorld
    {
        // Even chances over the lights' irradiance: a light is chosen about as often as it matters.
        return Lamps.Aim(ref world, scene, p, bin, numbers.Next(ref world), numbers.Next(ref world), numbers.Next(ref world), out var to, out var far, out _, out _)
            && to.Z > 0 && world.IsBlocked(p, to, far * 0.9999f) ? 1 : 0;
    }

    /// <summary>The ground as it is seen from one way out.</summary>
    internal static GroundSurface Surface<TWorld>(ref TWorld world, in GroundRecord ground, Float3 wo)
        where TWorld : struct, IWorld
    {
        var surface = new GroundSurface { CoatRough = ground.CoatRough, CoatMean = ground.CoatMean, CoatAlbedo = ground.CoatAlbedo };
        if (ground.CoatRough > 0)
        {
            surface.CoatOut = AlbedoTable.Read(ref world, ground.CoatAlbedo, wo);
            surface.CoatShare = MathF.Min(0.9f, MathF.Max(0.25f, surface.CoatOut / (surface.CoatOut + 0.25f)));
        }

        return surface;
    }
}
