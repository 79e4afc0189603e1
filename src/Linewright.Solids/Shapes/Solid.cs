using Linewright.Solids.Lanes;
using Linewright.Solids.Space;

namespace Linewright.Solids.Shapes;

/// <summary>
/// A body given by its signed distance: negative inside, positive outside, mm. The distance never overstates
/// (it changes by at most 1 mm a mm), so that a ball of that radius is known to be clear of the surface.
/// </summary>
/// <remarks>
/// Immutable and safe to share between threads. A tree of primitives and of unions and intersections in negation
/// normal form: placements, growth and complements are pushed down to the primitives when the tree is built.
/// Where two surfaces meet at a convex edge the distance outside is understated, never overstated.
/// </remarks>
public abstract class Solid
{
    /// <summary>Batches come in multiples of this many points.</summary>
    public const int BatchStep = 16;

    private protected Solid(Bounds bounds) => Bounds = bounds;

    /// <summary>A box that holds every point of the solid; all of space for a complement.</summary>
    public Bounds Bounds { get; }

    /// <summary>Number of primitives in the tree.</summary>
    public abstract int LeafCount { get; }

    /// <summary>Signed distance in double precision.</summary>
    public abstract double Distance(Vec3 p);

    /// <summary>Signed distance and its gradient in double precision; the gradient is the outward normal on the surface.</summary>
    public abstract (double Distance, Vec3 Gradient) Sense(Vec3 p);

    /// <summary>Signed distance as one lane of a batch computes it, bit for bit.</summary>
    public abstract float DistanceSingle(float x, float y, float z);

    /// <summary>Signed distances of a batch; the length is a multiple of <see cref="BatchStep"/>.</summary>
    public abstract void Distances(
        ReadOnlySpan<float> x, ReadOnlySpan<float> y, ReadOnlySpan<float> z, Span<float> distance, Arena arena);

    /// <summary>Signed distances and gradients of a batch; the length is a multiple of <see cref="BatchStep"/>.</summary>
    public abstract void Gradients(
        ReadOnlySpan<float> x, ReadOnlySpan<float> y, ReadOnlySpan<float> z,
        Span<float> distance, Span<float> gx, Span<float> gy, Span<float> gz, Arena arena);

    /// <summary>
    /// The solid with all that cannot matter within a ball taken out: inside that ball it gives the same
    /// distances, bit for bit. Also the distance at the ball's centre.
    /// </summary>
    public abstract Solid Near(float x, float y, float z, float radius, out float distance);

    /// <summary>The same solid placed elsewhere or mirrored.</summary>
    public abstract Solid Moved(Pose pose);

    /// <summary>The solid with its surface moved outwards by a distance (inwards where negative).</summary>
    public abstract Solid Grown(double by);

    /// <summary>All that is not in the solid.</summary>
    public abstract Solid Complement();

    /// <summary>The solid moved by an offset.</summary>
    public Solid Moved(double x, double y, double z) => Moved(Pose.Move(x, y, z));

    /// <summary>What is in any of the solids.</summary>
    public static Solid Union(params ReadOnlySpan<Solid> parts) => Union(Blend.Sharp, parts);

    /// <summary>What is in any of the solids, with a blend at the inside edges.</summary>
    public static Solid Union(Blend blend, params ReadOnlySpan<Solid> parts) => Combination.Of(false, blend, parts);

    /// <summary>What all the solids have in common.</summary>
    public static Solid Common(params ReadOnlySpan<Solid> parts) => Common(Blend.Sharp, parts);

    /// <summary>What all the solids have in common, with a blend at the outside edges.</summary>
    public static Solid Common(Blend blend, params ReadOnlySpan<Solid> parts) => Combination.Of(true, blend, parts);

    /// <summary>This solid less the others.</summary>
    public Solid Minus(params ReadOnlySpan<Solid> cuts) => Minus(Blend.Sharp, cuts);

    /// <summary>This solid less the others, with a blend at the edges of the cut.</summary>
    public Solid Minus(Blend blend, params ReadOnlySpan<Solid> cuts)
    {
        var parts = new Solid[cuts.Length + 1];
        parts[0] = this;
        for (var i = 0; i < cuts.Length; i++)
        {
            parts[i + 1] = cuts[i].Complement();
        }

        return Common(blend, parts);
    }

    /// <summary>The skin of the solid, a given thickness inwards from its surface.</summary>
    public Solid Shell(double thickness) => Minus(Grown(-Guard.Positive(thickness)));
}
