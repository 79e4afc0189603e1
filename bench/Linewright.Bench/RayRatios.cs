using System.Diagnostics;
using Linewright.Pictures.Rays;
using Linewright.Solids.Meshing;
using Linewright.Solids.Space;
using Linewright.Stones;

namespace Linewright.Bench;

/// <summary>The tracer's trees against Embree's, and planes against triangles, on the same rays in turns: ratios that another load of the machine does not move.</summary>
internal static class RayRatios
{
    private const int Turns = 7;

    public static void Run()
    {
        using var field = new RayField(400_000);
        Builds();
        if (Embree.IsHere)
        {
            using var embree = new Embree(field.Ring, field.Places);
            foreach (var (name, rays) in field.Kinds)
            {
                float[] ours = new float[rays.Length], theirs = new float[rays.Length];
                var (a, b) = InTurns(
                    () => Fill(rays, ours, ray => field.Tree.Nearest(ray.Origin, ray.Direction, 1e30f, -1, false).Distance),
                    () => Fill(rays, theirs, ray => embree.Nearest(ray)));
                var differing = ours.Zip(theirs).Count(pair => Math.Abs(pair.First - pair.Second) > 1e-3f * (1 + Math.Min(pair.First, 100)));
                Say($"{name}: {rays.Length / a / 1e6:0.00} M rays/s, Embree {rays.Length / b / 1e6:0.00}, ratio {b / a:0.00}; {differing} of {rays.Length} differ");
            }
        }
        else
        {
            Say($"{Embree.NotHere}");
        }

        foreach (var sides in new[] { 16, 32, 64 })
        {
            Stones(sides);
        }
    }

    private static void Builds()
    {
        var mesh = RayField.MakeRing(1000);
        var best = double.MaxValue;
        for (var i = 0; i < 5; i++)
        {
            var clock = Stopwatch.StartNew();
            using var tree = WideTree.Over(mesh, 0);
            best = Math.Min(best, clock.Elapsed.TotalSeconds);
        }

        Say($"tree over {mesh.TriangleCount} triangles: {best * 1000:0} ms");
        if (Embree.IsHere)
        {
            var clock = Stopwatch.StartNew();
            using var embree = new Embree(mesh, [Pose.Identity]);
            Say($"Embree over the same: {clock.Elapsed.TotalMilliseconds:0} ms");
        }
    }

    /// <summary>Ways of light inside a brilliant: its planes against the same stone as triangles.</summary>
    private static unsafe void Stones(int girdleSides)
    {
        var body = RoundBrilliant.Cut(2, BrilliantProportions.Modern with { GirdleSides = girdleSides }).Stone!.Body;
        var faceted = new FacetBody(body);
        Mesh mesh = body.Moved(Pose.Move(faceted.Middle * -1)).ToMesh();
        using var forest = new ThingForest([mesh], [(0, Pose.Identity)], [], [], 1);
        using var block = new AlignedBlock<float>(faceted.Numbers);
        var planes = faceted.At(block.Pointer);
        var rays = Inside(planes);
        var sink = new float[rays.Length];
        var (wide, triangles) = InTurns(
            () => Exits16(rays, planes),
            () => Fill(rays, sink, ray => forest.Tree.Nearest(ray.Origin, ray.Direction, 1e30f, -1, false).Distance));
        var (narrow, again) = InTurns(
            () => Exits8(rays, planes),
            () => Fill(rays, sink, ray => forest.Tree.Nearest(ray.Origin, ray.Direction, 1e30f, -1, false).Distance));
        Say($"inside a stone of {faceted.Count} planes, {mesh.TriangleCount} triangles: AVX-512 {rays.Length / wide / 1e6:0.0} M/s, {triangles / wide:0.0} x the tree; AVX2 {rays.Length / narrow / 1e6:0.0} M/s, {again / narrow:0.0} x");
    }

    private static TestRay[] Inside(FacetPlanes planes)
    {
        var random = new Random(3);
        var rays = new TestRay[200_000];
        Float3 o = default, d = new(0.3f, 0.5f, 0.81f);
        for (var i = 0; i < rays.Length; i++)
        {
            if (i % 12 == 0)
            {
                o = default;
                d = Float3.Normalise(new Float3(random.NextSingle() - 0.5f, random.NextSingle() - 0.5f, random.NextSingle() - 0.5f));
            }

            rays[i] = new TestRay(o, d);
            var hit = FacetTracing.LeavePlain(planes, o, d);
            o += d * MathF.Max(0, hit.Distance);
            var n = planes.Normal(hit.Facet);
            d -= n * (2 * Float3.Dot(d, n));
        }

        return rays;
    }

    private static float Exits16(TestRay[] rays, FacetPlanes planes)
    {
        var sum = 0f;
        foreach (var ray in rays)
        {
            sum += FacetExit.Leave16(planes, ray.Origin, ray.Direction).Distance;
        }

        return sum;
    }

    private static float Exits8(TestRay[] rays, FacetPlanes planes)
    {
        var sum = 0f;
        foreach (var ray in rays)
        {
            sum += FacetExit.Leave8(planes, ray.Origin, ray.Direction).Distance;
        }

        return sum;
    }

    private static float Fill(TestRay[] rays, float[] distances, Func<TestRay, float> trace)
    {
        for (var i = 0; i < rays.Length; i++)
        {
            distances[i] = trace(rays[i]);
        }

        return distances[0];
    }

    /// <summary>Least seconds of each, measured in turns.</summary>
    private static (double First, double Second) InTurns(Func<float> first, Func<float> second)
    {
        double a = double.MaxValue, b = double.MaxValue;
        for (var i = 0; i < Turns; i++)
        {
            a = Math.Min(a, Seconds(first));
            b = Math.Min(b, Seconds(second));
        }

        return (a, b);
    }

    private static double Seconds(Func<float> work)
    {
        var clock = Stopwatch.StartNew();
        GC.KeepAlive(work());
        return clock.Elapsed.TotalSeconds;
    }

    private static void Say(FormattableString line) => Console.WriteLine(FormattableString.Invariant(line));
}
