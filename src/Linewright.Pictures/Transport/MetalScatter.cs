using Linewright.Pictures.Rays;

namespace Linewright.Pictures.Transport;

/// <summary>A path at a metal surface: light aimed at, and the way on.</summary>
internal static class MetalScatter
{
    /// <summary>How far off the surface a path starts anew, mm: above the rounding of a hit at 100 mm, far below any detail.</summary>
    private const float Lift = 2e-4f;

    /// <summary>Goes on from a hit.</summary>
    /// <returns>False where the path ends.</returns>
    public static bool Turn<TWorld>(
        ref TWorld world, in SceneRecord scene, in Encounter hit, ref PathState path, ref SampleStream numbers, out Float3 shown)
        where TWorld : struct, IWorld
    {
        ref readonly var metal = ref world.Metal(hit.Thing);
        ref readonly var frame = ref world.MetalFrame(hit.Thing);
        ref readonly var normals = ref world.Normals(hit.Thing, hit.Piece);
        var p = path.Origin + path.Direction * hit.Distance;
        var back = path.Direction * -1f;

        // The smooth normal, turned to the side that is looked at; flat where the smooth one faces away.
        var flat = frame.Outwards(normals.Flat);
        var n = Float3.Normalise(frame.Outwards(normals.A * (1 - hit.U - hit.V) + normals.B * hit.U + normals.C * hit.V));
        if (Float3.Dot(flat, back) < 0)
        {
            // Seen from within, where a stone dips into its bearing: the surface reflects on this side too.
            flat *= -1f;
            n *= -1f;
        }

        if (Float3.Dot(n, back) < 1e-3f)
        {
            n = flat;
        }

        shown = n;
        var across = Across(frame, metal, n, p);
        var along = Float3.Cross(across, n);
        var wo = new Float3(Float3.Dot(along, back), Float3.Dot(across, back), MathF.Max(Float3.Dot(n, back), 1e-4f));

        var index = Curves.Read(ref world, metal.ColumnN, path.Bin);
        var extinction = Curves.Read(ref world, metal.ColumnK, path.Bin);
        var straight = Curves.Read(ref world, metal.ColumnNormal, path.Bin);
        var lost = 1 / AlbedoTable.Read(ref world, metal.Albedo, wo) - 1;
        var carried = path.Carried * new Four(1 + straight.A * lost, 1 + straight.B * lost, 1 + straight.C * lost, 1 + straight.D * lost);
        var start = p + flat * Lift;

        if (Lamps.Aim(ref world, scene, start, path.Bin, numbers.Next(ref world), numbers.Next(ref world), numbers.Next(ref world), out var to, out var distance, out var density, out var light)
            && Float3.Dot(to, flat) > 0)
        {
            var wi = new Float3(Float3.Dot(along, to), Float3.Dot(across, to), Float3.Dot(n, to));
            if (wi.Z > 0)
            {
                var h = Float3.Normalise(wo + wi);
                var mirrored = Microfacet.Reflected(wo, wi, h, metal.Along, metal.Across);
                if (mirrored > 1e-7f && !Lamps.IsCutOff(ref world, scene, start, to, distance))
                {
                    var other = Microfacet.ReflectedDensity(wo, h, metal.Along, metal.Across);
                    path.Carried = carried * Reflectance(Float3.Dot(wo, h), index, extinction) * (mirrored * Lamps.Aimed(scene, density, other));
                    path.Gather(light, scene.Clamp);
                }
            }
        }

        var facing = Microfacet.VisibleNormal(wo, metal.Along, metal.Across, numbers.Next(ref world), numbers.Next(ref world));
        var cosine = Float3.Dot(wo, facing);
        var on = facing * (2 * cosine) - wo;
        if (on.Z <= 0)
        {
            return false;
        }

        path.Carried = carried * Reflectance(cosine, index, extinction) * Microfacet.Weight(wo, on, metal.Along, metal.Across);
        path.Density = Microfacet.ReflectedDensity(wo, facing, metal.Along, metal.Across);
        path.Direction = along * on.X + across * on.Y + n * on.Z;
        var above = Float3.Dot(path.Direction, flat);
        if (above <= 0)
        {
            // The smooth normal sends it into the flat triangle: folded back. No aimed ray finds that way.
            path.Direction = Float3.Normalise(path.Direction - flat * (2 * above - 1e-3f));
            path.Density = 0;
        }

        path.Origin = start;
        path.LeaveOut = -1;
        path.Scattered = 1;
        return true;
    }

    /// <summary>Direction on the surface across the polish lines.</summary>
    private static Float3 Across(in Turn frame, in MetalRecord metal, Float3 n, Float3 p)
    {
        var lines = metal.Lines;
        if (metal.Waviness > 0)
        {
            // Lines waver over some millimetres, as a hand-held brush leaves them. Assumed: half a radian at most.
            var q = frame.PointInwards(p);
            var bend = 0.5f * metal.Waviness * GroundPattern.Noise(q.X * 0.9f + q.Z * 0.4f, q.Y * 0.9f - q.Z * 0.3f, 71u, out _, out _);
            lines += new Float3(-lines.Y, lines.X, lines.Z * 0.3f) * bend;
        }

        var across = Float3.Cross(n, frame.Outwards(lines));
        var length = Float3.Dot(across, across);
        if (length < 1e-4f)
        {
            Float3.Frame(n, out across, out _);
            return across;
        }

        return across * (1 / MathF.Sqrt(length));
    }

    private static Four Reflectance(float cosine, Four n, Four k) => new(
        Fresnel.Conductor(cosine, n.A, k.A), Fresnel.Conductor(cosine, n.B, k.B),
        Fresnel.Conductor(cosine, n.C, k.C), Fresnel.Conductor(cosine, n.D, k.D));
}
