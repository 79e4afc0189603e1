using System.Collections.Concurrent;
using Linewright.Assembly;
using Linewright.Brief;
using Linewright.Checks;
using Linewright.Parts;
using Linewright.Staging;
using Linewright.Tests.Core;

namespace Linewright.Tests.Staging;

public class RestingTests
{
    // What a picture may be wrong by, mm: below what its finest pixel shows.
    private const double MostMm = 0.01;

    // Of the examples, meshed for production: within 5 um. The other line's meshes are for checks and within 50 um.
    private static readonly Lazy<PieceModel> HarbourLights = new(() =>
    {
        var read = BriefReader.Read(File.ReadAllBytes(Path.Combine(Repository.Root, "examples", "harbour-lights.json")), "harbour-lights");
        return PieceModel.Build(PartsBuilder.Build(LineDesign.Solve(BriefDefaults.Resolve(read.Brief!))));
    });

    // Poses and their measurements take seconds each on production meshes: every test looks at the same ones.
    private static readonly ConcurrentDictionary<(double, SceneKind), Lazy<RestingLine>> Known = new();
    private static readonly ConcurrentDictionary<(double, SceneKind), Lazy<RestingMeasure>> Measured = new();
    private static readonly ConcurrentDictionary<double, Lazy<JointFreedom>> Felt = new();

    public static TheoryData<double, SceneKind> Lines => new(
        from diameter in (double[])[3.0, 2.0]
        from scene in (SceneKind[])[SceneKind.Draped, SceneKind.Closed, SceneKind.Clasp, SceneKind.Flat, SceneKind.Link]
        select (diameter, scene));

    [Theory]
    [MemberData(nameof(Lines))]
    public void Nothing_is_sunk_and_no_neighbours_overlap(double diameter, SceneKind scene)
    {
        var measure = Measure(diameter, scene);
        Assert.InRange(measure.DeepestMm, -Off(diameter), Off(diameter));

        // Taut, a bar touches its eye: a nanometre either way is rounding.
        Assert.True(measure.LeastGapMm >= -1e-6, measure.ToString());
    }

    [Theory]
    [MemberData(nameof(Lines))]
    public void Joints_stay_within_what_was_felt_on_the_solids(double diameter, SceneKind scene)
    {
        var model = Model(diameter);
        var freedom = Freedom(diameter);
        const double rounding = 1e-4;
        foreach (var lie in Line(diameter, scene).Chains.SelectMany(chain => chain.Lies(model.Piece)))
        {
            Assert.InRange(lie.Hinge, -freedom.Outward - rounding, freedom.Inward + rounding);
            Assert.InRange(Math.Abs(lie.Sideways), 0, freedom.Sideways + rounding);
            Assert.InRange(Math.Abs(lie.Twist), 0, freedom.Twist + rounding);
            Assert.InRange(Math.Abs(lie.AcrossMm), 0, freedom.SidePlayMm + rounding);

            // Pulled taut a bar touches its eye: all of the play, not a hair less.
            Assert.InRange(lie.RadialMm, 0, model.Piece.Hinge.PlayMm + rounding);
        }
    }

    [Theory]
    [InlineData(3.0)]
    [InlineData(2.0)]
    public void What_is_laid_flat_stands_on_the_ground_with_every_piece(double diameter)
    {
        foreach (var scene in (SceneKind[])[SceneKind.Draped, SceneKind.Clasp, SceneKind.Flat, SceneKind.Link])
        {
            Assert.InRange(Measure(diameter, scene).HighestFootMm, -Off(diameter), Off(diameter));
        }
    }

    [Theory]
    [InlineData(3.0)]
    [InlineData(2.0)]
    public void Closed_on_its_side_only_links_next_to_the_wider_clasp_hang_from_it(double diameter)
    {
        var model = Model(diameter);
        var bodies = LineBodies.Of(model);
        var pieces = Line(diameter, SceneKind.Closed).Chains.Single().Pieces;
        var count = model.Piece.Layout.Count;
        foreach (var at in pieces)
        {
            var beside = Math.Min(at.Index, count - 1 - at.Index);
            var foot = bodies.Of(at.Kind).LowestMm(at.Pose);

            // The clasp stands out over the links by some tenths of a millimetre; that is as high as anything hangs.
            var most = at.Kind == RestingKind.Link && beside < 6 ? (model.Piece.Clasp.WidthMm - model.Piece.Link.WidthMm) / 2 + 0.05 : Off(diameter);
            Assert.InRange(foot, -Off(diameter), most);
        }
    }

    [Fact]
    public void The_closed_line_settles_to_less_energy_and_comes_to_rest()
    {
        var model = Model(3.0);
        LinePoses.Closed(model, Freedom(3.0), out var settled, TestContext.Current.CancellationToken);
        Assert.True(settled.IsAtRest, settled.ToString());
        Assert.True(settled.EnergyMicroJoule[^1] < 0.95 * settled.EnergyMicroJoule[0]);
        Assert.True(settled.ErrorMm < 1e-3);
    }

    [Fact]
    public void The_draped_line_bends_as_tightly_as_its_sideways_flex_allows_and_no_tighter()
    {
        var model = Model(3.0);
        var freedom = Freedom(3.0);
        var line = Line(3.0, SceneKind.Draped);
        var most = line.Chains.Single().Lies(model.Piece).Max(lie => Math.Abs(lie.Sideways));
        Assert.InRange(most, 0.8 * freedom.Sideways, freedom.Sideways);

        // Known: a chord of p on a circle of R turns by 2 asin(p / 2R) at each corner. Source: Euclid's chords.
        Assert.Equal(2 * Math.Asin(model.Piece.Layout.PitchMm / (2 * line.Bend)), most, 0.05 * most);
    }

    [Fact]
    public void A_stiffer_joint_lies_in_a_wider_bend()
    {
        var piece = Model(3.0).Piece;
        var freedom = Freedom(3.0);
        var (free, stiff) = (LinePoses.Draped(piece, freedom), LinePoses.Draped(piece, freedom.Part(0.5)));
        Assert.InRange(stiff.Bend, 1.8 * free.Bend, 2.2 * free.Bend);
    }

    [Fact]
    public void In_the_clasp_picture_the_tongue_is_out_and_every_stone_has_its_link()
    {
        var piece = Model(3.0).Piece;
        var line = Line(3.0, SceneKind.Clasp);
        var box = line.Pieces.Single(at => at.Kind == RestingKind.Box).Pose;
        var tongue = line.Pieces.Single(at => at.Kind == RestingKind.Tongue).Pose;
        var fold = box.Inverse().Point(tongue.Point(new(piece.Clasp.FoldMm, 0, 0)));
        Assert.True(fold.X > piece.Clasp.MouthMm);
        var parts = line.Parts(piece);
        Assert.Equal(line.Pieces.Count(at => at.Kind == RestingKind.Link), parts.Stones.Length);
        Assert.Single(parts.Of(PartRole.Safety));
    }

    private static PieceModel Model(double diameter) => diameter >= 3 ? HarbourLights.Value : CheckedPieces.White;

    private static double Off(double diameter) => Math.Max(MostMm, Model(diameter).Piece.Design.Brief.Process.MeshDeviationUm / 1000);

    private static JointFreedom Freedom(double diameter)
        => Felt.GetOrAdd(diameter, key => new Lazy<JointFreedom>(() => JointFreedoms.Of(Model(key)))).Value;

    private static RestingMeasure Measure(double diameter, SceneKind scene)
        => Measured.GetOrAdd((diameter, scene), key => new Lazy<RestingMeasure>(() => RestingMeasure.Of(Model(key.Item1), Line(key.Item1, key.Item2)))).Value;

    private static RestingLine Line(double diameter, SceneKind scene)
        => Known.GetOrAdd((diameter, scene), key => new Lazy<RestingLine>(() => Poses.Of(Model(key.Item1), key.Item2))).Value;
}
