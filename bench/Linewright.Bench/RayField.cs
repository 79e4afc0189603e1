using Linewright.Pictures.Rays;
using Linewright.Solids.Meshing;
using Linewright.Solids.Space;

namespace Linewright.Bench;

/// <summary>Forty bumpy rings of 50,000 triangles in a line, and rays of three kinds: the same field for both trees.</summary>
internal sealed class RayField : IDisposable
{
    public const string CoherentRays = "coherent";
    public const string BouncedRays = "bounced, shuffled";
    public const string RaysFromAnywhere = "from anywhere";

    private readonly ThingForest forest;

    public RayField(int count)
    {
        Ring = MakeRing(158);
        Places = [.. Enumerable.Range(0, 40).Select(i => Pose.Turn(Vec3.UnitX, 0.35 * (i % 5)).Then(Pose.Turn(Vec3.UnitZ, 0.6 * i)) with
        {
            Origin = new Vec3(1.7 * (i % 10) - 7.6, 2.4 * (i / 10) - 3.6, 0.2 * (i % 3)),
        })];
        forest = new ThingForest([Ring], [.. Places.Select(p => (0, p))], [], [], 0);
        Coherent = Primary(count);
        var random = new Random(7);
        Incoherent = Bounced(random);
        Hardest = Anywhere(count, random);
    }

    public Mesh Ring { get; }

    public IReadOnlyList<Pose> Places { get; }

    public ThingTree Tree => forest.Tree;

    /// <summary>From one eye, row by row.</summary>
    public TestRay[] Coherent { get; }

    /// <summary>From where those hit, evenly over the hemisphere, shuffled.</summary>
    public TestRay[] Incoherent { get; }

    /// <summary>From anywhere in the box, anywhere.</summary>
    public TestRay[] Hardest { get; }

    /// <summary>All of them, by name.</summary>
    public IReadOnlyDictionary<string, TestRay[]> Kinds => new Dictionary<string, TestRay[]>(StringComparer.Ordinal)
    {
        [CoherentRays] = Coherent,
        [BouncedRays] = Incoherent,
        [RaysFromAnywhere] = Hardest,
    };

    public void Dispose() => forest.Dispose();

    /// <summary>A superelliptic ring with fine bumps: 2 n2 triangles.</summary>
    public static Mesh MakeRing(int n)
    {
        var positions = new float[3 * n * n];
        var triangles = new int[6 * n * n];
        static double Bent(double x) => Math.Sign(x) * Math.Pow(Math.Abs(x), 0.7);
        for (var i = 0; i < n; i++)
        {
            for (var j = 0; j < n; j++)
            {
                double u = 2 * Math.PI * i / n, v = 2 * Math.PI * j / n, r = 0.25 * (1 + 0.06 * Math.Sin(13 * u) * Math.Cos(7 * v));
                var p = new Vec3(0.8 * Bent(Math.Cos(u)), 0.55 * Bent(Math.Sin(u)), 0)
                    + new Vec3(Math.Cos(u), Math.Sin(u), 0) * (r * Math.Cos(v)) + Vec3.UnitZ * (r * Math.Sin(v));
                var at = i * n + j;
                (positions[3 * at], positions[3 * at + 1], positions[3 * at + 2]) = ((float)p.X, (float)p.Y, (float)p.Z);
                int a = at, b = (i + 1) % n * n + j, c = (i + 1) % n * n + (j + 1) % n, d = i * n + (j + 1) % n;
                ((int[])[a, b, c, a, c, d]).CopyTo(triangles, 6 * at);
            }
        }

        return new Mesh(positions, triangles);
    }

    private static TestRay[] Primary(int count)
    {
        var side = (int)Math.Sqrt(count);
        var eye = new Vec3(0, -9, 16);
        Vec3 ahead = (-eye).Normalised(), right = ahead.Cross(Vec3.UnitZ).Normalised(), up = right.Cross(ahead);
        return [.. Enumerable.Range(0, side * side).Select(i => new TestRay(
            new Float3(eye), new Float3((ahead + right * ((i % side + 0.5) / side - 0.5) + up * (0.5 * ((i / side + 0.5) / side - 0.5))).Normalised())))];
    }

    private TestRay[] Bounced(Random random)
    {
        var rays = new List<TestRay>();
        foreach (var ray in Coherent)
        {
            var hit = Tree.Nearest(ray.Origin, ray.Direction, 1e30f, -1, false);
            if (hit.Thing < 0)
            {
                continue;
            }

            var way = Way(random);
            if (Float3.Dot(way, ray.Direction) > 0)
            {
                way *= -1f;
            }

            rays.Add(new TestRay(ray.Origin + ray.Direction * (hit.Distance - 1e-3f), way));
        }

        var shuffled = rays.ToArray();
        random.Shuffle(shuffled);
        return shuffled;
    }

    private static TestRay[] Anywhere(int count, Random random) => [.. Enumerable.Range(0, count / 2).Select(_ => new TestRay(
        new Float3((random.NextSingle() - 0.5f) * 18, (random.NextSingle() - 0.5f) * 10, (random.NextSingle() - 0.5f) * 2), Way(random)))];

    private static Float3 Way(Random random)
    {
        double z = 2 * random.NextDouble() - 1, phi = 2 * Math.PI * random.NextDouble(), r = Math.Sqrt(1 - z * z);
        return new Float3((float)(r * Math.Cos(phi)), (float)(r * Math.Sin(phi)), (float)z);
    }
}
