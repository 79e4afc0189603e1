using Linewright.Solids.Meshing;
using Linewright.Solids.Shapes;
using Linewright.Solids.Space;

namespace Linewright.Solids.Measures;

/// <summary>A solid's surface as points to feel with, in the solid's own frame, mm. Safe to share between threads.</summary>
/// <remarks>
/// The points lie on the true surface, not on the mesh they were spread over, and are kept in clusters of neighbours,
/// each with the ball that holds it, so that a search touches only the few clusters that can matter.
/// </remarks>
public sealed class ProbeSurface
{
    /// <summary>Points a cluster: two batches of the widest lanes.</summary>
    internal const int ClusterSize = 32;

    // Samples further than this from the true surface belong to another one: the mesh and the solid do not match.
    private const double MostProjectionMm = 0.1;

    // Cubes hold some dozens of probes each at usual spacings.
    private const double CellMm = 0.5;

    // Cubes in which the solid is cut down for clusters that feel it: narrower ones prune no further, since all of a
    // cluster must find its answer in one. Clusters with as wide a spacing are no wider than this many spacings.
    private const double NearCellMm = 0.4, NearMarginMm = 0.5, NearReachSpacings = 6;

    private readonly Solid solid;
    private readonly Lazy<LocalField> nearField;

    private ProbeSurface(Solid solid, float[] x, float[] y, float[] z, int count, double spacing)
    {
        this.solid = solid;
        nearField = new Lazy<LocalField>(
            () => new LocalField(solid, new Bounds(Centre, Centre).Grown(OuterRadius + NearMarginMm), NearCellMm, NearReachSpacings * Spacing));
        (X, Y, Z, Count, Spacing) = (x, y, z, count, spacing);
        var clusters = x.Length / ClusterSize;
        ClusterCount = clusters;
        var padded = (clusters + Solid.BatchStep - 1) / Solid.BatchStep * Solid.BatchStep;
        (CentreX, CentreY, CentreZ, Radius) = (new float[padded], new float[padded], new float[padded], new float[padded]);
        var box = Bounds.Empty;
        for (var c = 0; c < clusters; c++)
        {
            var own = Bounds.Empty;
            for (var i = c * ClusterSize; i < (c + 1) * ClusterSize; i++)
            {
                own = own.Join(new Bounds(Point(i), Point(i)));
            }

            var centre = own.Centre;
            (CentreX[c], CentreY[c], CentreZ[c]) = ((float)centre.X, (float)centre.Y, (float)centre.Z);
            Radius[c] = (float)(Reach(c * ClusterSize, (c + 1) * ClusterSize, new Vec3(CentreX[c], CentreY[c], CentreZ[c])) + 1e-6);
            box = box.Join(own);
        }

        Centre = clusters == 0 ? Vec3.Zero : box.Centre;
        OuterRadius = Reach(0, x.Length, Centre);
    }

    /// <summary>Number of probes.</summary>
    public int Count { get; }

    /// <summary>The spacing asked for, mm.</summary>
    public double Spacing { get; }

    /// <summary>Every point of the surface that was probed has a probe within this distance, mm.</summary>
    public double Cover => Spacing * SurfaceSamples.CoverInSpacings;

    internal int ClusterCount { get; }

    internal float[] X { get; }

    internal float[] Y { get; }

    internal float[] Z { get; }

    internal float[] CentreX { get; }

    internal float[] CentreY { get; }

    internal float[] CentreZ { get; }

    internal float[] Radius { get; }

    /// <summary>Centre of a ball that holds all probes.</summary>
    internal Vec3 Centre { get; }

    /// <summary>Radius of that ball, mm.</summary>
    internal double OuterRadius { get; }

    /// <summary>Spreads probes over a mesh of the solid, all of it or where a condition on the point holds.</summary>
    /// <param name="solid">The body the mesh was made from, in the same frame.</param>
    /// <param name="mesh">Any mesh within 0.1 mm of the solid's surface; simplified ones will do.</param>
    /// <param name="spacing">Distance between neighbouring probes, mm; 0.1 suits links, above 0.</param>
    /// <param name="where">Which part of the surface counts, for instance the side towards a hinge; all where null.</param>
    public static ProbeSurface Of(Solid solid, Mesh mesh, double spacing, Func<Vec3, bool>? where = null)
    {
        ArgumentNullException.ThrowIfNull(solid);
        ArgumentNullException.ThrowIfNull(mesh);
        var (x, y, z) = SurfaceSamples.Of(mesh, spacing, where);
        if (x.Length == 0)
        {
            return new ProbeSurface(solid, [], [], [], 0, spacing);
        }

        SurfaceSamples.Project(new LocalField(solid, mesh.Bounds.Grown(MostProjectionMm), CellMm), x, y, z, MostProjectionMm);
        var order = Clustered(x, y, z);

        // The last cluster is filled up with copies of the last probe.
        var padded = (x.Length + ClusterSize - 1) / ClusterSize * ClusterSize;
        float[] px = new float[padded], py = new float[padded], pz = new float[padded];
        for (var i = 0; i < padded; i++)
        {
            var from = order[Math.Min(i, order.Length - 1)];
            (px[i], py[i], pz[i]) = (x[from], y[from], z[from]);
        }

        return new ProbeSurface(solid, px, py, pz, x.Length, spacing);
    }

    /// <summary>Position of one probe.</summary>
    public Vec3 Point(int index) => new(X[index], Y[index], Z[index]);

    /// <summary>The probe nearest to a point; an endlessly far one where none is within a limit, mm.</summary>
    internal Vec3 NearestTo(Vec3 p, double limit)
    {
        var far = double.PositiveInfinity;
        var (nearest, best) = (limit, new Vec3(far, far, far));
        for (var c = 0; c < ClusterCount; c++)
        {
            if ((new Vec3(CentreX[c], CentreY[c], CentreZ[c]) - p).Length - Radius[c] >= nearest)
            {
                continue;
            }

            for (var i = c * ClusterSize; i < (c + 1) * ClusterSize; i++)
            {
                var distance = (Point(i) - p).Length;
                (nearest, best) = distance < nearest ? (distance, Point(i)) : (nearest, best);
            }
        }

        return best;
    }

    /// <summary>A solid that answers for another within a ball; for the one that was probed, with what cannot matter there taken out.</summary>
    internal Solid Near(Solid asked, Vec3 centre, double radius)
        => ReferenceEquals(asked, solid) && radius <= NearReachSpacings * Spacing ? nearField.Value.At(centre) : asked;

    private double Reach(int begin, int end, Vec3 from)
    {
        var most = 0.0;
        for (var i = begin; i < end; i++)
        {
            most = Math.Max(most, (Point(i) - from).Length);
        }

        return most;
    }

    /// <summary>An order in which each run of <see cref="ClusterSize"/> points lies close together: halved along the longest side.</summary>
    private static int[] Clustered(float[] x, float[] y, float[] z)
    {
        var order = new int[x.Length];
        for (var i = 0; i < order.Length; i++)
        {
            order[i] = i;
        }

        Split(0, order.Length);
        return order;

        void Split(int begin, int end)
        {
            if (end - begin <= ClusterSize)
            {
                return;
            }

            var box = Bounds.Empty;
            for (var k = begin; k < end; k++)
            {
                var p = new Vec3(x[order[k]], y[order[k]], z[order[k]]);
                box = box.Join(new Bounds(p, p));
            }

            var size = box.Size;
            var along = size.X >= size.Y && size.X >= size.Z ? x : size.Y >= size.Z ? y : z;
            order.AsSpan(begin, end - begin).Sort((i, j) => along[i] != along[j] ? along[i].CompareTo(along[j]) : i.CompareTo(j));
            var clusters = (end - begin + ClusterSize - 1) / ClusterSize;
            var middle = begin + clusters / 2 * ClusterSize;
            Split(begin, middle);
            Split(middle, end);
        }
    }
}
