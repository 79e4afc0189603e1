using Linewright.Casting;
using Linewright.Making;
using Linewright.Materials;
using Linewright.Parts;
using Linewright.Solids.Measures;
using Linewright.Solids.Meshing;
using Linewright.Solids.Space;

namespace Linewright.Tests.Core;

/// <summary>Runs the chain forwards on the pattern files: scale, take off what finishing takes; what comes out must be the nominal part.</summary>
public class ForwardChainTests
{
    // Faces to a few micrometres; a face that is all edge to the breaking of its edges; a fillet to less than the allowance.
    private const double MicrometresMm = 0.005, FaceMm = 0.03, EdgeMm = 0.10;

    public static TheoryData<string, string> Ways => new()
    {
        { "printed-resin", "link" }, { "printed-resin", "box" }, { "printed-resin", "tongue" }, { "printed-resin", "safety" },
        { "carved-wax-mould", "link" }, { "printed-resin-silicone", "box" },
    };

    [Theory]
    [MemberData(nameof(Ways))]
    public void A_pattern_run_through_its_chain_is_the_finished_part(string route, string name)
    {
        var piece = CheckedPieces.Piece(4, "gold-750-yellow");
        piece = piece with { Design = piece.Design with { Brief = piece.Design.Brief with { Process = Routed(piece, route) } } };
        var chain = piece.Design.Brief.Chain;
        var part = piece.Parts.Single(candidate => candidate.Name == name);
        var asCast = Mesher.Run(part.AsCast, new MeshSettings(0.08, 0.02, false), stop: TestContext.Current.CancellationToken);
        var pattern = Pattern.Of(part, asCast, chain);

        // Faces come back to a few micrometres, kept or polished. What is left of a percent lies on faces so small that their broken edges meet: stops, the rim of the eye.
        var places = ChainProduct.Of(part, pattern.Mesh, chain).Places;
        Near(FaceKind.Polished, name is "link" or "tongue" ? 0.96 : 0.999, 500);
        Near(FaceKind.Kept, name == "link" ? 0.97 : 0.999, name == "safety" ? 0 : 500);

        // In fillets metal is left over, never short: a fillet that is grown is fuller by up to 0.7 of the allowance. So is one that a wheel does not
        // reach into, and a sharper corner in the pattern would crack.
        Assert.All(places.Where(place => place.Ground == ChainProduct.Ground.Blend), place => Assert.InRange(place.LeftMm, -0.01, 0.07));

        // Where a kept face meets a polished one the step ends in an edge, which the polisher breaks; it is no more than the step and its edge.
        var border = places.Where(place => place.Ground == ChainProduct.Ground.Border).ToList();
        Assert.True(border.Count(place => Math.Abs(place.LeftMm) < EdgeMm) >= 0.98 * border.Count, FormattableString.Invariant($"{border.Count} beside a border"));
        Assert.All(border, place => Assert.InRange(place.LeftMm, -0.06, 0.2));

        // The other way: every point of the nominal part is met by the chain's product: as far inside the casting as is taken off there.
        var nominal = Mesher.Run(part.AsSet, new MeshSettings(0.1, 0.03, false), stop: TestContext.Current.CancellationToken).Mesh;
        var vertices = Enumerable.Range(0, nominal.VertexCount).Select(nominal.Vertex).ToList();
        var depths = ManyDistances.Of(part.AsCast, vertices);
        var allowance = chain.AllowanceMm(FaceKind.Polished);
        var explained = depths.Count(depth => Math.Abs(depth) < FaceMm || Math.Abs(depth + allowance) < FaceMm);
        Assert.True(depths.Max() < EdgeMm || name is "link" or "tongue", FormattableString.Invariant($"{depths.Max()}")); // A closed eye and bent claws lie outside the open casting
        Assert.True(explained > 0.80 * depths.Length, FormattableString.Invariant($"{explained} of {depths.Length}"));

        void Near(FaceKind kind, double share, int least)
        {
            var some = places.Where(place => place.Kind == kind && place.Ground == ChainProduct.Ground.Face).ToList();
            var near = some.Count(place => Math.Abs(place.LeftMm) < MicrometresMm);
            Assert.True(some.Count >= least, FormattableString.Invariant($"{some.Count} of {places.Count} on {kind} faces"));
            Assert.True(near >= share * some.Count, FormattableString.Invariant($"{near} of {some.Count} on {kind} faces within {MicrometresMm}"));
            Assert.All(some, place => Assert.InRange(place.LeftMm, -FaceMm, FaceMm));
        }
    }

    [Fact]
    public void Without_the_chain_the_pattern_is_not_the_finished_part()
    {
        // The test above can fail: skip the shrinking, or polish the bores as well, and the part is off by what it says.
        var piece = CheckedPieces.Piece(4, "gold-750-yellow");
        var box = piece.Parts.Single(part => part.Name == "box");
        var chain = piece.Design.Brief.Chain;
        var roof = new Vec3(6, 0.45 * piece.Clasp.WidthMm - 0.3, piece.Clasp.HeightMm + 0.10);
        Assert.Equal(0.10, box.AsSet.Distance(roof), 0.005);
        Assert.Equal(0.10 + 0.006 * roof.Z, box.AsSet.Distance(roof * chain.PatternScale), 0.006);
        var cavity = new Vec3((piece.Clasp.CavityMm + piece.Clasp.CatchMm) / 2, 0, piece.Clasp.WallMm);
        Assert.Equal(0, box.AsCast.Distance(cavity), 0.005); // The cavity keeps its size
        Assert.Equal(FaceKind.Kept, new FaceMap(box, 0.10).KindAt(cavity));
    }

    private static Brief.ProcessBrief Routed(Piece piece, string route)
    {
        var process = piece.Design.Brief.Process;
        var chain = ProcessChain.Of(route, MaterialTables.ProcessOf(piece.Design.Brief.Alloy).LinearShrinkPercent);
        return process with { Route = route, ShrinkPercent = chain.ShrinkPercent };
    }
}
