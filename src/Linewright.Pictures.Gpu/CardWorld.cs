using ILGPU;
using Linewright.Pictures.Rays;
using Linewright.Pictures.Transport;

namespace Linewright.Pictures.Gpu;

/// <summary>The scene in a card's memory: what a path asks of it, in plain arithmetic, one lane a path.</summary>
internal struct CardWorld : IWorld
{
    /// <summary>Boxes that can wait at once: one a level, over things and triangles together.</summary>
    private const int Depth = 96;

    /// <summary>As on the processor: nearly parallel planes are never the exit of a closed body.</summary>
    private const float Parallel = 1e-7f;

    /// <summary>Planes that a lane looks at together; a body's rows are filled up to a multiple with <see cref="NoPlane"/>.</summary>
    public const int PlanesAtOnce = 4;

    public ArrayView<CardNode> Nodes;
    public ArrayView<CardTriangle> Triangles;
    public ArrayView<TriangleNormals> NormalRows;
    public ArrayView<CardThing> Things;
    public ArrayView<Float4> Planes;
    public ArrayView<MetalRecord> Metals;
    public ArrayView<StoneRecord> Stones;
    public ArrayView<LampRecord> Lamps;
    public ArrayView<StripRecord> Strips;
    public ArrayView<SkyCell> Cells;
    public ArrayView<WaveBin> Waves;
    public ArrayView<float> Curves;
    public ArrayView<float> Albedos;
    public ArrayView<uint> Sobol;
    public int Root;
    public int MetalCount;

    /// <summary>Parallel to every ray, and every point behind it: neither way in nor way out.</summary>
    public static Float4 NoPlane => new(0, 0, 0, 1);

    public readonly Encounter Nearest(Float3 origin, Float3 direction, float far, int leaveOut) => Walk(origin, direction, far, leaveOut, 0);

    public readonly bool IsBlocked(Float3 origin, Float3 direction, float far) => Walk(origin, direction, far, -1, 1).Thing >= 0;

    public readonly FacetHit Leave(int stone, Float3 origin, Float3 direction)
    {
        var thing = Things[MetalCount + stone];

        // The nearest so far as a fraction, compared without dividing and without a branch: four planes under way at once.
        float gap = 1e30f, slope = 1;
        var facet = 0;
        for (var i = 0; i < thing.Second; i += PlanesAtOnce)
        {
            var at = thing.First + i;
            Float4 a = Planes[at], b = Planes[at + 1], c = Planes[at + 2], d = Planes[at + 3];
            Nearer(a, i, origin, direction, ref gap, ref slope, ref facet);
            Nearer(b, i + 1, origin, direction, ref gap, ref slope, ref facet);
            Nearer(c, i + 2, origin, direction, ref gap, ref slope, ref facet);
            Nearer(d, i + 3, origin, direction, ref gap, ref slope, ref facet);
        }

        return new FacetHit { Distance = gap / slope, Facet = facet };
    }

    public readonly Float4 Facet(int stone, int facet) => Planes[Things[MetalCount + stone].First + facet];

    public readonly ref readonly Turn StoneFrame(int stone) => ref Things[MetalCount + stone].Frame;

    public readonly ref readonly Turn MetalFrame(int metal) => ref Things[metal].Frame;

    public readonly ref readonly TriangleNormals Normals(int metal, int triangle) => ref NormalRows[Things[metal].Second + triangle];

    public readonly ref readonly MetalRecord Metal(int metal) => ref Metals[metal];

    public readonly ref readonly StoneRecord Stone(int stone) => ref Stones[stone];

    public readonly ref readonly LampRecord Lamp(int lamp) => ref Lamps[lamp];

    public readonly ref readonly StripRecord Strip(int strip) => ref Strips[strip];

    public readonly ref readonly SkyCell Cell(int cell) => ref Cells[cell];

    public readonly ref readonly WaveBin Wave(int bin) => ref Waves[bin];

    public readonly float Curve(int place) => Curves[place];

    public readonly float Albedo(int place) => Albedos[place];

    public readonly uint SobolNumber(int place) => Sobol[place];

    /// <summary>The first thing on a ray. One loop over both levels, so that the lanes of a group stay together.</summary>
    private readonly Encounter Walk(Float3 o, Float3 d, float far, int leaveOut, int any)
    {
        var hit = new Encounter { Distance = far, Thing = -1 };
        var places = LocalMemory.Allocate<int>(Depth);
        var entries = LocalMemory.Allocate<float>(Depth);
        var waiting = 0;
        var current = Root;

        // Inside which metal part, and how many boxes waited when it was entered.
        int inside = -1, floor = 0;
        Float3 ro = o, rd = d, over = Over(d);
        while (true)
        {
            if (current >= 0)
            {
                var node = Nodes[current];
                var a = Enter(node.LowA, node.HighA, ro, over, hit.Distance);
                var b = Enter(node.LowB, node.HighB, ro, over, hit.Distance);
                if (a >= 0 && b >= 0)
                {
                    var isAFirst = a <= b;
                    places[waiting] = isAFirst ? node.ChildB : node.ChildA;
                    entries[waiting] = isAFirst ? b : a;
                    waiting++;
                    current = isAFirst ? node.ChildA : node.ChildB;
                    continue;
                }

                if (a >= 0)
                {
                    current = node.ChildA;
                    continue;
                }

                if (b >= 0)
                {
                    current = node.ChildB;
                    continue;
                }
            }
            else if (inside >= 0)
            {
                if (Leaf(~current, ro, rd, ref hit))
                {
                    hit.Thing = inside;
                    if (any != 0)
                    {
                        return hit;
                    }
                }
            }
            else if (~current != leaveOut)
            {
                var thing = Things[~current];
                if (~current < MetalCount)
                {
                    inside = ~current;
                    floor = waiting;
                    ro = thing.Frame.PointInwards(o);
                    rd = thing.Frame.Inwards(d);
                    over = Over(rd);
                    current = thing.First;
                    continue;
                }

                if (Meet(thing, o, d, ref hit))
                {
                    hit.Thing = ~current;
                    if (any != 0)
                    {
                        return hit;
                    }
                }
            }

            do
            {
                if (inside >= 0 && waiting == floor)
                {
                    inside = -1;
                    ro = o;
                    rd = d;
                    over = Over(d);
                }

                if (waiting == 0)
                {
                    return hit;
                }

                waiting--;
            }
            while (entries[waiting] > hit.Distance);
            current = places[waiting];
        }
    }

    /// <summary>Where a ray enters a box, mm; -1 where it does not before <paramref name="far"/>.</summary>
    private static float Enter(Float3 low, Float3 high, Float3 o, Float3 over, float far)
    {
        float x0 = (low.X - o.X) * over.X, x1 = (high.X - o.X) * over.X;
        float y0 = (low.Y - o.Y) * over.Y, y1 = (high.Y - o.Y) * over.Y;
        float z0 = (low.Z - o.Z) * over.Z, z1 = (high.Z - o.Z) * over.Z;
        var enter = MathF.Max(MathF.Max(MathF.Min(x0, x1), MathF.Min(y0, y1)), MathF.Max(MathF.Min(z0, z1), 0f));
        var leave = MathF.Min(MathF.Min(MathF.Max(x0, x1), MathF.Max(y0, y1)), MathF.Min(MathF.Max(z0, z1), far));
        return enter <= leave ? enter : -1f;
    }

    private static Float3 Over(Float3 d) => new(Over(d.X), Over(d.Y), Over(d.Z));

    private static float Over(float d) => 1f / (MathF.Abs(d) < 1e-18f ? (d < 0 ? -1e-18f : 1e-18f) : d);

    /// <summary>Source: Möller and Trumbore (1997), Fast, minimum storage ray-triangle intersection.</summary>
    private readonly bool Leaf(int leaf, Float3 o, Float3 d, ref Encounter hit)
    {
        var met = false;
        var end = leaf / TreeNode.Width + leaf % TreeNode.Width;
        for (var i = leaf / TreeNode.Width; i <= end; i++)
        {
            var triangle = Triangles[i];
            var p = Float3.Cross(d, triangle.EdgeV);
            var inverse = 1f / Float3.Dot(triangle.EdgeU, p);
            var s = o - triangle.Corner;
            var u = Float3.Dot(s, p) * inverse;
            var q = Float3.Cross(s, triangle.EdgeU);
            var v = Float3.Dot(d, q) * inverse;
            var t = Float3.Dot(triangle.EdgeV, q) * inverse;
            if (u >= 0 && v >= 0 && u + v <= 1 && t > 0 && t < hit.Distance)
            {
                hit.Distance = t;
                hit.U = u;
                hit.V = v;
                hit.Piece = triangle.Number;
                met = true;
            }
        }

        return met;
    }

    /// <summary>Takes a plane where a ray leaves by it before <paramref name="gap"/> over <paramref name="slope"/>.</summary>
    private static void Nearer(Float4 plane, int number, Float3 o, Float3 d, ref float gap, ref float slope, ref int facet)
    {
        var s = plane.X * d.X + plane.Y * d.Y + plane.Z * d.Z;
        var g = plane.W - (plane.X * o.X + plane.Y * o.Y + plane.Z * o.Z);
        var isNearer = (s > Parallel) & (g * slope < gap * s);
        gap = isNearer ? g : gap;
        slope = isNearer ? s : slope;
        facet = isNearer ? number : facet;
    }

    private readonly bool Meet(in CardThing body, Float3 origin, Float3 direction, ref Encounter hit)
    {
        var q = origin - body.Frame.Origin;
        var b = Float3.Dot(q, direction);
        var c = Float3.Dot(q, q) - body.Radius * body.Radius;
        if (b * b < c || (b > 0 && c > 0))
        {
            return false;
        }

        var o = body.Frame.Inwards(q);
        var d = body.Frame.Inwards(direction);

        // The last way in and the first way out, as fractions.
        float gapIn = 1e30f, slopeIn = -1, gapOut = 1e30f, slopeOut = 1;
        var which = -1;
        for (var i = 0; i < body.Second; i += PlanesAtOnce)
        {
            var at = body.First + i;
            Float4 a = Planes[at], e = Planes[at + 1], f = Planes[at + 2], g = Planes[at + 3];
            Cross(a, i, o, d, ref gapIn, ref slopeIn, ref which, ref gapOut, ref slopeOut);
            Cross(e, i + 1, o, d, ref gapIn, ref slopeIn, ref which, ref gapOut, ref slopeOut);
            Cross(f, i + 2, o, d, ref gapIn, ref slopeIn, ref which, ref gapOut, ref slopeOut);
            Cross(g, i + 3, o, d, ref gapIn, ref slopeIn, ref which, ref gapOut, ref slopeOut);
        }

        float enter = gapIn / slopeIn, leave = gapOut / slopeOut;
        if (enter <= 0 || enter >= leave || enter >= hit.Distance)
        {
            return false;
        }

        hit.Distance = enter;
        hit.Piece = which;
        return true;
    }

    /// <summary>Takes a plane where it is entered later than all before it, or left sooner.</summary>
    private static void Cross(
        Float4 plane, int number, Float3 o, Float3 d, ref float gapIn, ref float slopeIn, ref int which, ref float gapOut, ref float slopeOut)
    {
        var s = plane.X * d.X + plane.Y * d.Y + plane.Z * d.Z;
        var g = plane.W - (plane.X * o.X + plane.Y * o.Y + plane.Z * o.Z);
        var isLater = (s < 0) & (g * slopeIn > gapIn * s);
        gapIn = isLater ? g : gapIn;
        slopeIn = isLater ? s : slopeIn;
        which = isLater ? number : which;
        var isSooner = (s >= 0) & (g * slopeOut < gapOut * s);
        gapOut = isSooner ? g : gapOut;
        slopeOut = isSooner ? s : slopeOut;
    }
}
