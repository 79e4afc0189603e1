using Linewright.Solids.Outlines;
using Linewright.Solids.Space;

namespace Linewright.Tests.Solids;

/// <summary>What rays along a view meet, triangle by triangle: the plain way to the same view, to judge drawn lines by.</summary>
/// <remarks>Shares no step with the drawing of lines but the frame of the view. Depth grows towards the eye, mm.</remarks>
internal sealed class RayPicture
{
    private const double CellMm = 0.1;

    private readonly ViewFrame frame;
    private readonly double cutDepth;
    private readonly List<Face> faces = [];
    private readonly Dictionary<(int X, int Y), List<int>> cells = [];

    public RayPicture(ViewFrame frame, IEnumerable<RayBody> bodies, double cutDepth = double.PositiveInfinity)
    {
        (this.frame, this.cutDepth) = (frame, cutDepth);
        foreach (var (body, tag) in bodies.Select((body, tag) => (body, tag)))
        {
            for (var i = 0; i < body.Corners.Length; i += 3)
            {
                Vec3 a = body.Pose.Point(body.Corners[i]), b = body.Pose.Point(body.Corners[i + 1]), c = body.Pose.Point(body.Corners[i + 2]);
                Add(new Face(
                    frame.Flat(a), frame.Flat(b), frame.Flat(c), new Vec3(frame.Depth(a), frame.Depth(b), frame.Depth(c)),
                    body.Pose.Direction(body.Normals[i]), body.Pose.Direction(body.Normals[i + 1]), body.Pose.Direction(body.Normals[i + 2]), tag));
            }
        }
    }

    /// <summary>Left, low, right and high of all that is there.</summary>
    public (double Left, double Low, double Right, double High) Box { get; private set; } =
        (double.PositiveInfinity, double.PositiveInfinity, double.NegativeInfinity, double.NegativeInfinity);

    /// <summary>All that a ray meets, the nearest first; in a section what is left, and the cut face of each body that it is within there.</summary>
    public List<Hit> Cast(FlatPoint p)
    {
        var hits = new List<Hit>();
        foreach (var index in cells.TryGetValue(CellOf(p.X, p.Y), out var list) ? list : [])
        {
            var (a, b, c, depths, normalA, normalB, normalC, tag) = faces[index];
            double area = (b - a).Cross(c - a), atB = (p - a).Cross(c - a) / area, atC = (b - a).Cross(p - a) / area, atA = 1 - atB - atC;
            if (atA >= 0 && atB >= 0 && atC >= 0)
            {
                var normal = (normalA * atA + normalB * atB + normalC * atC).Normalised();
                hits.Add(new Hit(atA * depths.X + atB * depths.Y + atC * depths.Z, normal, normal.Dot(frame.Toward), tag));
            }
        }

        // Within a body are those places before which a ray has met it an odd number of times.
        var within = hits.Where(hit => hit.Depth > cutDepth).GroupBy(hit => hit.Tag).Where(met => met.Count() % 2 == 1).Select(met => met.Key).ToList();
        hits.RemoveAll(hit => hit.Depth > cutDepth);
        hits.AddRange(within.Select(tag => new Hit(cutDepth, frame.Toward, 1, tag)));
        hits.Sort((one, other) => other.Depth.CompareTo(one.Depth));
        return hits;
    }

    private static (int X, int Y) CellOf(double x, double y) => ((int)Math.Floor(x / CellMm), (int)Math.Floor(y / CellMm));

    private void Add(Face face)
    {
        double left = Math.Min(face.A.X, Math.Min(face.B.X, face.C.X)), right = Math.Max(face.A.X, Math.Max(face.B.X, face.C.X));
        double low = Math.Min(face.A.Y, Math.Min(face.B.Y, face.C.Y)), high = Math.Max(face.A.Y, Math.Max(face.B.Y, face.C.Y));
        Box = (Math.Min(Box.Left, left), Math.Min(Box.Low, low), Math.Max(Box.Right, right), Math.Max(Box.High, high));
        if (Math.Abs((face.B - face.A).Cross(face.C - face.A)) < 1e-12)
        {
            return;
        }

        faces.Add(face);
        var (first, last) = (CellOf(left, low), CellOf(right, high));
        for (var x = first.X; x <= last.X; x++)
        {
            for (var y = first.Y; y <= last.Y; y++)
            {
                if (!cells.TryGetValue((x, y), out var list))
                {
                    cells.Add((x, y), list = []);
                }

                list.Add(faces.Count - 1);
            }
        }
    }

    /// <summary>What a ray meets: how deep, the surface's normal there, its cosine to the eye, whose surface.</summary>
    public readonly record struct Hit(double Depth, Vec3 Normal, double Facing, int Tag);

    private readonly record struct Face(FlatPoint A, FlatPoint B, FlatPoint C, Vec3 Depths, Vec3 NormalA, Vec3 NormalB, Vec3 NormalC, int Tag);
}
