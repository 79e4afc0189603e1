using Linewright.Parts;
using Linewright.Solids.Measures;
using Linewright.Solids.Meshing;
using Linewright.Solids.Space;

namespace Linewright.Assembly;

/// <summary>The rigid pieces of a line: a link with its stone and its pin, the clasp closed, and its two halves.</summary>
/// <param name="Link">A link, in its own frame.</param>
/// <param name="Clasp">Box, tongue and safety together, in the clasp's frame.</param>
/// <param name="Box">Box and safety.</param>
/// <param name="Tongue">Tongue alone.</param>
public sealed record LineBodies(RestBody Link, RestBody Clasp, RestBody Box, RestBody Tongue)
{
    // 1 g/cm3 is 0.001 g/mm3.
    private const double GramsPerMm3 = 1e-3;

    /// <summary>The body of a kind of piece.</summary>
    public RestBody Of(RestingKind kind) => kind switch
    {
        RestingKind.Link => Link,
        RestingKind.Clasp => Clasp,
        RestingKind.Box => Box,
        _ => Tongue,
    };

    /// <summary>Weighs and measures the pieces of a model.</summary>
    public static LineBodies Of(PieceModel model)
    {
        ArgumentNullException.ThrowIfNull(model);
        var piece = model.Piece;
        var metal = piece.Design.Brief.Alloy.DensityGPerCm3 * GramsPerMm3;
        var stone = (piece.Stone.Body.ToMesh().Moved(Pose.Move(0, 0, piece.Link.GirdleHeightMm)), piece.Design.Brief.Species.SpecificGravity * GramsPerMm3);
        (Mesh, double) Metal(PartRole role, Pose? at = null) => (at is { } pose ? model.MeshOf(role).Mesh.Moved(pose) : model.MeshOf(role).Mesh, metal);
        IEnumerable<(Mesh, double)> Optional(PartRole role, Vec3 at)
            => piece.Find(role) is null ? [] : [Metal(role, Pose.Move(at))];
        var pinOfLink = Optional(PartRole.Pin, piece.Link.BarAxis);
        var pinOfBox = Optional(PartRole.Pin, new Vec3(0, 0, piece.Hinge.HeightMm));
        var safety = Optional(PartRole.Safety, Vec3.Zero);
        List<(Mesh, double)> box = [Metal(PartRole.Box), .. safety, .. pinOfBox];
        return new LineBodies(
            Body([Metal(PartRole.Link), stone, .. pinOfLink]),
            Body([.. box, Metal(PartRole.Tongue)]),
            Body(box),
            Body([Metal(PartRole.Tongue)]));
    }

    private static RestBody Body(IReadOnlyList<(Mesh Mesh, double GramsPerMm3)> parts)
    {
        var weighed = parts.Select(part => (Mass: MassProperties.Of(part.Mesh), part.GramsPerMm3)).ToList();
        var grams = weighed.Sum(part => part.Mass.Volume * part.GramsPerMm3);
        var centre = weighed.Aggregate(Vec3.Zero, (sum, part) => sum + part.Mass.Centroid * (part.Mass.Volume * part.GramsPerMm3 / grams));

        // The mean of three moments is two thirds of the mass at its distance from the middle; each part's moments are about its own middle.
        var turning = weighed.Sum(part => part.GramsPerMm3 * ((part.Mass.Inertia.XX + part.Mass.Inertia.YY + part.Mass.Inertia.ZZ) / 3
            + part.Mass.Volume * 2.0 / 3 * (part.Mass.Centroid - centre).Dot(part.Mass.Centroid - centre)));
        return new RestBody(grams, centre, Math.Sqrt(turning / grams), HullCorners.Of(parts.Select(part => part.Mesh)));
    }
}
