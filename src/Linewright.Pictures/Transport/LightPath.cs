using Linewright.Pictures.Rays;

namespace Linewright.Pictures.Transport;

/// <summary>Follows one sample from the eye to the light. The heart of the tracer; one source for every processor.</summary>
/// <remarks>
/// Written for kernels: structs, numbers, no objects, no exceptions, no library functions beyond square root and
/// rounding. The world brings the scene: vectors and pointers on the processor; a graphics processor
/// brings the same records in its own buffers. The first stone is followed both ways, thrown back and let through, since the eye
/// looks at it; everywhere else a path goes one way.
/// </remarks>
internal static class LightPath
{
    /// <summary>Surfaces after which a path is cut. Paths are given up at random long before: fewer than one in 10^6 gets here.</summary>
    private const int Longest = 96;

    private const int Nothing = 0;
    private const int OnGround = 1;
    private const int OnLamp = 2;
    private const int OnThing = 3;

    /// <summary>One sample of a pixel.</summary>
    /// <param name="world">Tables and rays.</param>
    /// <param name="scene">Camera, ground, surroundings.</param>
    /// <param name="x">Pixel from the left.</param>
    /// <param name="y">Pixel from the top.</param>
    /// <param name="index">Number of the sample in its pixel.</param>
    public static SampleOutcome Trace<TWorld>(ref TWorld world, in SceneRecord scene, int x, int y, uint index)
        where TWorld : struct, IWorld
    {
        var walk = Begin(ref world, scene, x, y, index);
        while (Step(ref world, scene, ref walk, int.MaxValue))
        {
            // To its end.
        }

        return Finish(ref world, walk);
    }

    /// <summary>A sample that has not left the eye yet.</summary>
    public static Walk Begin<TWorld>(ref TWorld world, in SceneRecord scene, int x, int y, uint index)
        where TWorld : struct, IWorld
    {
        var key = Scalar.Hash((uint)(y * scene.Camera.Width + x) * 9781u + Scalar.Hash(scene.Seed));
        var walk = new Walk { Numbers = new SampleStream(key, index), Seen = new SampleOutcome { Alpha = 1 } };
        walk.Path = EyeRay(ref world, scene.Camera, x, y, ref walk.Numbers);
        return walk;
    }

    /// <summary>What a sample saw, once it has nowhere to go.</summary>
    public static SampleOutcome Finish<TWorld>(ref TWorld world, in Walk walk)
        where TWorld : struct, IWorld
    {
        var seen = walk.Seen;
        seen.Colour = Colour(ref world, walk.Path.Gathered, walk.Path.Bin);
        return seen;
    }

    /// <summary>Follows a sample to the next thing, or through so many turns inside a stone.</summary>
    /// <returns>Whether it goes on.</returns>
    public static bool Step<TWorld>(ref TWorld world, in SceneRecord scene, ref Walk walk, int mostTurns)
        where TWorld : struct, IWorld
    {
        ref var path = ref walk.Path;
        ref var numbers = ref walk.Numbers;
        bool goesOn;
        if (path.Inside < 0)
        {
            goesOn = Meet(ref world, scene, ref walk);
        }
        else
        {
            goesOn = true;
        }

        if (goesOn && path.Inside >= 0)
        {
            goesOn = StonePath.Inside(ref world, ref path, ref numbers, mostTurns);
            if (goesOn && path.Inside >= 0)
            {
                return true;
            }
        }

        if (goesOn && walk.Depth >= 3)
        {
            var survival = MathF.Min(0.95f, path.Carried.Largest);
            goesOn = numbers.Next(ref world) < survival;
            path.Carried *= 1 / survival;
        }

        walk.Depth++;
        if (goesOn)
        {
            return walk.Depth < Longest;
        }

        if (walk.IsKept == 0)
        {
            return false;
        }

        // The light thrown back by the first stone is still to be followed.
        walk.IsKept = 0;
        walk.Depth = 1;
        var gathered = path.Gathered;
        path = walk.Kept;
        path.Gathered = gathered;
        StonePath.Reflect(ref world, walk.KeptHit.Thing - scene.MetalCount, walk.KeptHit, ref path, 1);
        return true;
    }

    /// <summary>The next thing on the path.</summary>
    /// <returns>Whether the path goes on from it, or into it.</returns>
    private static bool Meet<TWorld>(ref TWorld world, in SceneRecord scene, ref Walk walk)
        where TWorld : struct, IWorld
    {
        ref var path = ref walk.Path;
        ref var numbers = ref walk.Numbers;
        ref var seen = ref walk.Seen;
        var depth = walk.Depth;
        var far = Lamps.Far;
        var kind = Nothing;
        if (scene.Ground.Kind >= 0 && path.Direction.Z < -1e-7f)
        {
            var t = (scene.Ground.Height - path.Origin.Z) / path.Direction.Z;
            if (t > 0)
            {
                far = t;
                kind = OnGround;
            }
        }

        var lamp = Lamps.Meet(ref world, scene, path.Origin, path.Direction, ref far);
        if (lamp >= 0)
        {
            kind = OnLamp;
        }

        var hit = world.Nearest(path.Origin, path.Direction, far, path.LeaveOut);
        if (hit.Thing >= 0)
        {
            kind = OnThing;
        }

        if (depth == 0 && kind != Nothing)
        {
            seen.Blur = Circle(scene.Camera, path.Direction, kind == OnThing ? hit.Distance : far);
        }

        var goesOn = false;
        if (kind == Nothing)
        {
            Miss(ref world, scene, ref path);
            if (depth == 0)
            {
                seen.Alpha = scene.Sky.Seen;
                seen.Albedo = new Float3(1, 1, 1);
                path.Gathered *= scene.Sky.Seen;
            }
        }
        else if (kind == OnLamp)
        {
            ref readonly var record = ref world.Lamp(lamp);
            var weight = Lamps.Found(scene, Lamps.Density(record, path.Direction, far), path.Density);
            path.Gather(Curves.Read(ref world, record.Column, path.Bin) * weight, scene.Clamp);
            if (depth == 0)
            {
                seen.Albedo = new Float3(1, 1, 1);
                seen.Depth = far;
            }
        }
        else if (kind == OnGround)
        {
            if (depth == 0 && scene.Ground.Transparent != 0)
            {
                var p = path.Origin + path.Direction * far;
                p.Z = scene.Ground.Height;
                seen.Alpha = GroundScatter.Shadow(ref world, scene, p, path.Bin, ref numbers);
            }
            else
            {
                goesOn = GroundScatter.Turn(ref world, scene, far, ref path, ref numbers, out var shown, out var tone);
                if (depth == 0)
                {
                    Show(ref seen, shown, scene.Ground.Colour * tone, far, 1);
                }
            }
        }
        else if (hit.Thing < scene.MetalCount)
        {
            goesOn = MetalScatter.Turn(ref world, scene, hit, ref path, ref numbers, out var shown);
            if (depth == 0)
            {
                Show(ref seen, shown, world.Metal(hit.Thing).Colour, hit.Distance, 2 + hit.Thing);
            }
        }
        else
        {
            var stone = hit.Thing - scene.MetalCount;
            path.Caustic = path.Scattered;
            path.LeaveOut = hit.Thing;
            path.Density = 0;
            goesOn = true;
            if (depth == 0)
            {
                var plane = world.Facet(stone, hit.Piece);
                var shown = world.StoneFrame(stone).Outwards(new Float3(plane.X, plane.Y, plane.Z));
                Show(ref seen, shown, new Float3(1, 1, 1), hit.Distance, 2 + scene.MetalCount + world.Stone(stone).FirstFacet + hit.Piece);

                // Follow the light that was let through now, the light thrown back afterwards.
                walk.Kept = path;
                walk.KeptHit = hit;
                walk.IsKept = 1;
                StonePath.Enter(ref world, stone, hit, ref path, 1);
            }
            else
            {
                var back = StonePath.Outside(ref world, stone, hit.Piece, path);
                if (numbers.Next(ref world) < back)
                {
                    StonePath.Reflect(ref world, stone, hit, ref path, back);
                }
                else
                {
                    StonePath.Enter(ref world, stone, hit, ref path, 1 - back);
                }
            }
        }

        return goesOn;
    }

    /// <summary>A ray through the lens. The pixel's window is a tent, a little wider than the pixel, so that edges come out smooth.</summary>
    private static PathState EyeRay<TWorld>(ref TWorld world, in CameraRecord camera, int x, int y, ref SampleStream numbers)
        where TWorld : struct, IWorld
    {
        float px = x + 0.5f + Tent(numbers.Next(ref world)), py = y + 0.5f + Tent(numbers.Next(ref world));
        var scale = 2 * camera.HalfHeight / camera.Height;
        var ahead = camera.Forward + camera.Right * ((px - 0.5f * camera.Width) * scale) + camera.Up * ((0.5f * camera.Height - py) * scale);
        var r = camera.Aperture * MathF.Sqrt(numbers.Next(ref world));
        Scalar.SinCosTurn(numbers.Next(ref world), out var sin, out var cos);
        var o = camera.Eye + camera.Right * (r * cos) + camera.Up * (r * sin);
        return new PathState
        {
            Origin = o,
            Direction = Float3.Normalise(camera.Eye + ahead * camera.Focus - o),
            Carried = new Four(1),
            LeaveOut = -1,
            Inside = -1,
            Bin = (int)(numbers.Next(ref world) * WaveBin.Count) & (WaveBin.Count - 1),
        };
    }

    /// <summary>Radius of the circle into which the lens spreads a point so far along a ray, pixels: the opening as seen through that point on the sharp plane.</summary>
    private static float Circle(in CameraRecord camera, Float3 direction, float distance)
    {
        var ahead = distance * Float3.Dot(direction, camera.Forward);
        var pixel = 2 * camera.HalfHeight * camera.Focus / camera.Height;
        return camera.Aperture * MathF.Abs(camera.Focus - ahead) / (ahead * pixel);
    }

    private static float Tent(float u)
    {
        // Half width in pixels. Assumed: 0.5 would be a box, 1 a full tent, soft; 0.8 keeps facets crisp.
        const float half = 0.8f;
        return u < 0.5f ? half * (MathF.Sqrt(2 * u) - 1) : half * (1 - MathF.Sqrt(2 - 2 * u));
    }

    private static void Miss<TWorld>(ref TWorld world, in SceneRecord scene, ref PathState path)
        where TWorld : struct, IWorld
    {
        var radiance = Sky.Radiance(ref world, scene.Sky, path.Direction);
        if (path.Density > 0)
        {
            radiance *= Lamps.Found(scene, scene.Sky.Chance * Sky.Density(ref world, path.Direction), path.Density);
        }

        path.Gather(Curves.Read(ref world, scene.Sky.Column, path.Bin) * radiance, scene.Clamp);
    }

    private static void Show(ref SampleOutcome seen, Float3 normal, Float3 albedo, float depth, int facet)
    {
        seen.Normal = normal;
        seen.Albedo = albedo;
        seen.Depth = depth;
        seen.Facet = facet;
    }

    private static Float3 Colour<TWorld>(ref TWorld world, Four light, int bin)
        where TWorld : struct, IWorld
    {
        WaveBin a = world.Wave(bin), b = world.Wave((bin + 256) & 1023), c = world.Wave((bin + 512) & 1023), d = world.Wave((bin + 768) & 1023);
        return new Float3(
            a.Red * light.A + b.Red * light.B + c.Red * light.C + d.Red * light.D,
            a.Green * light.A + b.Green * light.B + c.Green * light.C + d.Green * light.D,
            a.Blue * light.A + b.Blue * light.B + c.Blue * light.C + d.Blue * light.D) * 0.25f;
    }
}
