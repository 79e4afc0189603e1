using Linewright.Pictures.Rays;

namespace Linewright.Pictures.Transport;

/// <summary>A path at and inside a stone, all in the stone's frame until it leaves.</summary>
/// <remarks>
/// At every border the path goes one way, thrown back or let through, as often as light does. A few ways are all but closed,
/// round and round under the girdle: giving paths up at random and letting the survivors weigh more makes sparks of
/// them, and no cut at all takes for ever, so a path ends after <see cref="Patience"/> turns: a diamond loses 0.1 % of its light by it, moissanite 0.3 %. Once colours part, only
/// the hero goes on, for all four.
/// </remarks>
internal static class StonePath
{
    /// <summary>Turns inside after which a path is lost.</summary>
    private const int Patience = 128;

    /// <summary>Chance to go on once a stone has swallowed all but a fiftieth; the survivors weigh more.</summary>
    private const float Survival = 0.85f;

    /// <summary>Share thrown back at the outside, for the hero.</summary>
    public static float Outside<TWorld>(ref TWorld world, int stone, int facet, in PathState path)
        where TWorld : struct, IWorld
    {
        var plane = world.Facet(stone, facet);
        var d = world.StoneFrame(stone).Inwards(path.Direction);
        var cosine = MathF.Max(0f, -Float3.Dot(d, new Float3(plane.X, plane.Y, plane.Z)));
        return Fresnel.Dielectric(cosine, 1 / world.Curve(world.Stone(stone).ColumnIndex + path.Bin), out _);
    }

    /// <summary>Throws the path back at the outside; what it carries is multiplied by share over chance.</summary>
    public static void Reflect<TWorld>(ref TWorld world, int stone, in Encounter hit, ref PathState path, float chance)
        where TWorld : struct, IWorld
    {
        ref readonly var frame = ref world.StoneFrame(stone);
        var plane = world.Facet(stone, hit.Piece);
        var n = new Float3(plane.X, plane.Y, plane.Z);
        var d = frame.Inwards(path.Direction);
        var cosine = MathF.Max(0f, -Float3.Dot(d, n));
        var index = Curves.Read(ref world, world.Stone(stone).ColumnIndex, path.Bin);
        path.Carried *= new Four(
            Fresnel.Dielectric(cosine, 1 / index.A, out _), Fresnel.Dielectric(cosine, 1 / index.B, out _),
            Fresnel.Dielectric(cosine, 1 / index.C, out _), Fresnel.Dielectric(cosine, 1 / index.D, out _)) * (1 / chance);
        path.Origin += path.Direction * hit.Distance;
        path.Direction = Float3.Normalise(frame.Outwards(d + n * (2 * cosine)));
    }

    /// <summary>Lets the path in; what it carries is multiplied by share over chance.</summary>
    public static void Enter<TWorld>(ref TWorld world, int stone, in Encounter hit, ref PathState path, float chance)
        where TWorld : struct, IWorld
    {
        ref readonly var frame = ref world.StoneFrame(stone);
        ref readonly var substance = ref world.Stone(stone);
        var index = world.Curve(substance.ColumnIndex + path.Bin);
        var plane = world.Facet(stone, hit.Piece);
        var n = new Float3(plane.X, plane.Y, plane.Z);
        var d = frame.Inwards(path.Direction);
        var cosine = MathF.Max(0f, -Float3.Dot(d, n));
        var back = Fresnel.Dielectric(cosine, 1 / index, out var beyond);
        path.Carried *= (1 - back) / chance;
        if (substance.Disperses != 0 && path.Carried.B + path.Carried.C + path.Carried.D > 0)
        {
            path.Carried = new Four(path.Carried.A * 4, 0, 0, 0);
        }

        path.Origin = frame.PointInwards(path.Origin + path.Direction * hit.Distance);
        path.Direction = d * (1 / index) + n * (cosine / index - beyond);
        path.Inside = stone;
        path.Turns = 0;
    }

    /// <summary>Follows the path inside until it leaves, or for so many turns.</summary>
    /// <returns>False where it was given up.</returns>
    public static bool Inside<TWorld>(ref TWorld world, ref PathState path, ref SampleStream numbers, int mostTurns)
        where TWorld : struct, IWorld
    {
        var stone = path.Inside;
        ref readonly var substance = ref world.Stone(stone);
        var index = world.Curve(substance.ColumnIndex + path.Bin);
        Float3 o = path.Origin, d = path.Direction;
        var absorption = default(Four);
        if (substance.ColumnAbsorption >= 0)
        {
            absorption = Curves.Read(ref world, substance.ColumnAbsorption, path.Bin);
        }

        for (var left = mostTurns; left > 0; left--)
        {
            var exit = world.Leave(stone, o, d);
            var length = MathF.Max(0f, exit.Distance);
            o += d * length;
            if (substance.ColumnAbsorption >= 0)
            {
                path.Carried *= new Four(
                    Scalar.Exp(-absorption.A * length), Scalar.Exp(-absorption.B * length),
                    Scalar.Exp(-absorption.C * length), Scalar.Exp(-absorption.D * length));
            }

            var plane = world.Facet(stone, exit.Facet);
            var n = new Float3(plane.X, plane.Y, plane.Z);
            var cosine = MathF.Max(0f, Float3.Dot(d, n));
            var back = Fresnel.Dielectric(cosine, index, out var beyond);
            if (back < 1 && numbers.Next(ref world) >= back)
            {
                d = d * index + n * (beyond - index * cosine);
                ref readonly var frame = ref world.StoneFrame(stone);
                path.Origin = frame.PointOutwards(o);
                path.Direction = Float3.Normalise(frame.Outwards(d));
                path.Inside = -1;
                return true;
            }

            d -= n * (2 * cosine);
            if (path.Turns >= Patience || path.Carried.Largest < 0.02f)
            {
                if (numbers.Next(ref world) >= Survival)
                {
                    path.Inside = -1;
                    return false;
                }

                path.Carried *= 1 / Survival;
            }

            path.Turns++;
        }

        path.Origin = o;
        path.Direction = d;
        return true;
    }
}
