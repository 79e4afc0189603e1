using CsCheck;
using Linewright.Casting;
using Linewright.Materials;
using Linewright.Parts;
using Linewright.Solids.Measures;
using Linewright.Solids.Meshing;
using Linewright.Solids.Shapes;
using Linewright.Solids.Space;

namespace Linewright.Tests.Core;

/// <summary>Sprues, plates and trees: what the rule says, and that nothing touches what it must not.</summary>
public class CastingTests
{
    private static readonly MeshSettings Coarse = new(0.08, 0.01, false);

    public static TheoryData<string> Lines => ["4 mm, one tree", "2 mm, two trees"];

    [Fact]
    public void The_modulus_of_plain_bodies_is_that_of_their_meshes()
    {
        Assert.Equal(Modulus.OfBall(2.5), Measured(Shape.Ball(2.5)), 0.002);
        Assert.Equal(Modulus.OfCylinder(1.5, 4), Measured(Shape.Cylinder(1.5, 4)), 0.002);

        // A plate of 20 x 20 x 1 cools at its rim too: 400 / 880; wide, it comes to half its thickness.
        Assert.Equal(400.0 / 880, Measured(Shape.Box(20, 20, 1)), 0.001);
        Assert.Equal(Modulus.OfPlate(1), Modulus.Of(1e6, 2e6 + 4e3), 0.002);

        // A long bar whose ends do not cool: the cylinder's limit.
        Assert.Equal(Modulus.OfBar(3), Modulus.OfCylinder(1.5, 1e6), 1e-5);
        Assert.Equal(Modulus.OfHalfBall(3), Modulus.Of(2.0 / 3 * Math.PI * 27, 3 * Math.PI * 9), 1e-12);
        Assert.Equal(7, Modulus.OfHalfBall(Modulus.HalfBallForMm(7)), 1e-12);
        Assert.Equal(7, Modulus.OfBar(Modulus.BarForMm(7)), 1e-12);

        static double Measured(Solid solid)
        {
            var mass = MassProperties.Of(Mesher.Run(solid, Coarse, stop: TestContext.Current.CancellationToken).Mesh);
            return Modulus.Of(mass.Volume, mass.Area);
        }
    }

    [Fact]
    public void Equal_volumes_freeze_as_the_textbook_says()
    {
        // Ball 0.043 C, cube 0.028 C, cylinder as high as wide 0.033 C for a volume of 1. Source: Kalpakjian and Schmid, Manufacturing
        // Engineering and Technology, solidification times for various shapes. From memory.
        double ball = Modulus.OfBall(Math.Cbrt(3 / (4 * Math.PI))), cube = Modulus.Of(1, 6), radius = Math.Cbrt(1 / (2 * Math.PI));
        Assert.Equal(0.043, ball * ball, 0.0005);
        Assert.Equal(0.028, cube * cube, 0.0005);
        Assert.Equal(0.033, Math.Pow(Modulus.OfCylinder(radius, 2 * radius), 2), 0.0005);
        Assert.Equal(0.043 / 0.028, Modulus.TimeRatio(ball, cube), 0.03);
    }

    [Theory]
    [InlineData(1.0, 0.2, 1.5)] // The least that runs
    [InlineData(2.0, 0.2, 2.5)] // 1.25 of the thickest section
    [InlineData(1.0, 0.5, 2.2)] // 4 x 1.1 of the modulus
    public void A_sprue_is_as_thick_as_what_it_feeds_asks_for(double thickest, double modulus, double sprue)
        => Assert.Equal(sprue, SprueRule.DiameterMm(thickest, modulus), 1e-12);

    [Fact]
    public void The_thickest_section_is_the_largest_ball_inside()
    {
        Assert.Equal(2, ThickestSection.Of(Shape.Ball(1)).DiameterMm, 0.3);
        Assert.Equal(3, ThickestSection.Of(Shape.Box(3, 4, 5)).DiameterMm, 0.3);
        var (diameter, at) = ThickestSection.Of(Solid.Union(Shape.Ball(1.5).Moved(6, 0, 0), Shape.Rod(Vec3.Zero, new Vec3(6, 0, 0), 0.4)));
        Assert.InRange(diameter, 2.7, 3.3);
        Assert.InRange(at.X, 5.5, 6.5);
    }

    [Fact]
    public void A_plate_seen_from_above_has_the_depths_that_it_has()
    {
        var mesh = Mesher.Run(Solid.Union(Shape.Box(4, 4, 1), Shape.Box(1, 1, 2)), Coarse, stop: TestContext.Current.CancellationToken).Mesh;
        var map = DepthMap.Of(mesh, Vec3.UnitZ, 0.25);
        Assert.True(map.First(map.CountU / 2, map.CountV / 2, out var middle, out var depth, out var square, out var section));
        Assert.Equal((1.0, 0.0, 1.0, 2.0), (Round(middle.Z), Round(depth), Round(square), Round(section)));
        Assert.True(map.First(map.CountU / 2 + 5, map.CountV / 2, out var beside, out depth, out _, out section));
        Assert.Equal((0.5, 0.5, 1.0), (Round(beside.Z), Round(depth), Round(section)));
        Assert.False(map.First(-1, 0, out _, out _, out _, out _));

        static double Round(double value) => Math.Round(value, 3) + 0.0;
    }

    [Theory]
    [MemberData(nameof(Lines))]
    public void Every_cast_part_has_a_gate_on_polished_face_that_feeds_it(string line)
    {
        var (plan, piece) = Of(line);
        Assert.Equal(piece.Parts.Where(part => part.IsCast), plan.Parts.Select(part => part.Part));
        Assert.All(plan.Parts, sprued =>
        {
            var site = sprued.Site!;
            Assert.InRange(sprued.Part.AsCast.Distance(site.Point), -0.03, 0.03);
            Assert.Equal(FaceKind.Polished, new FaceMap(sprued.Part, 0.10).KindAt(site.Point));

            // Foundries: at least 1.1 of the modulus. A link for 2 mm stones has no polished face so wide, and then the report says so.
            var isToldThin = plan.Report.Notes.Any(note => note.StartsWith($"{sprued.Part.Name}: the gate of", StringComparison.Ordinal) && note.Contains("freezes before the part", StringComparison.Ordinal));
            Assert.Equal(sprued.FeedRatio < 1.1 - 0.005, isToldThin);
            Assert.True(!isToldThin || (line.StartsWith('2') && sprued.Part.Role == PartRole.Link), sprued.Part.Name);
            Assert.InRange(sprued.GateMm, sprued.FedMm, sprued.SprueMm);
        });
    }

    [Theory]
    [MemberData(nameof(Lines))]
    public void No_sprue_covers_a_bore_a_bearing_a_bar_or_the_catch(string line)
    {
        var (plan, piece) = Of(line);
        foreach (var sprued in plan.Parts)
        {
            // Faces that are the same as cast and as set are those that must stay as they are.
            var mesh = Mesher.Run(sprued.Part.AsSet, new MeshSettings(0.1, 0.03, false), stop: TestContext.Current.CancellationToken).Mesh;
            var vertices = Enumerable.Range(0, mesh.VertexCount).Select(mesh.Vertex).ToList();
            var cast = ManyDistances.Of(sprued.Part.AsCast, vertices);
            var with = ManyDistances.Of(sprued.Solid, vertices);
            var kept = Enumerable.Range(0, vertices.Count).Where(i => Math.Abs(cast[i]) < 0.02).ToList();
            Assert.True(sprued.Part.Role == PartRole.Safety || kept.Count > 50, sprued.Part.Name);
            Assert.All(kept, i => Assert.True(with[i] > cast[i] - 0.01, $"{sprued.Part.Name} at {vertices[i]}"));
        }

        Assert.Equal(piece.Layout.Count, plan.Parts[0].Part.Count);
    }

    [Fact]
    public void Where_finishing_takes_nothing_sprues_are_found_all_the_same()
    {
        // Then no face stands out as cast; gates as wide are found on the faces that would be polished, where they lie now.
        var (usual, piece) = Of("4");
        var process = piece.Design.Brief.Process with { FinishLossMm = 0 };
        var bare = PartsBuilder.Build(LineDesign.Solve(piece.Design.Brief with { Process = process }));
        var plan = CastingPlans.Of(bare, stop: TestContext.Current.CancellationToken);
        foreach (var (sprued, known) in plan.Parts.Zip(usual.Parts))
        {
            var site = sprued.Site;
            Assert.True(site is not null, sprued.Part.Name);
            Assert.InRange(sprued.Part.AsCast.Distance(site.Point), -0.06, 0.06);
            Assert.Equal(FaceKind.Polished, new FaceMap(known.Part, 0.10).KindAt(site.Point + site.Outward * 0.10));
            Assert.InRange(sprued.GateMm, known.GateMm - 0.25, known.GateMm + 0.25);
        }

        Assert.Equal(usual.Trees.Sum(tree => tree.Places.Length), plan.Trees.Sum(tree => tree.Places.Length));
    }

    [Theory]
    [MemberData(nameof(Lines))]
    public void Part_and_sprue_are_one_closed_body_with_no_more_holes(string line)
        => Assert.All(PatternsOf(line).Plan.Parts.Zip(PatternsOf(line).Meshes), pattern =>
        {
            var (sprued, mesh) = pattern;
            var surface = Topology.Inspect(mesh);
            Assert.True(surface.IsSound, sprued.Part.Name);
            var alone = Topology.Inspect(Mesher.Run(sprued.Part.AsCast, new MeshSettings(0.08, 0.02, true), stop: TestContext.Current.CancellationToken).Mesh);
            Assert.Equal((1, alone.Genus), (surface.Components, surface.Genus));

            // What the sprue adds is a rod, less its taper and its foot in the part.
            var rod = Math.PI / 4 * sprued.SprueMm * sprued.SprueMm * sprued.LengthMm;
            Assert.InRange(sprued.CastMm3 - sprued.PartMm3, 0.4 * rod, 1.15 * rod);

            // Upright, the foot of the sprue is the lowest of it all.
            Assert.InRange(sprued.UprightBox.Low.Z, -0.01, 0.01);
            Assert.True(sprued.PartBox.Low.Z > 0.4 * sprued.LengthMm, sprued.Part.Name);
        });

    [Fact]
    public void Faces_are_told_apart()
    {
        var piece = CheckedPieces.Yellow.Piece;
        var (hinge, link) = (piece.Hinge, piece.Link);
        var faces = new FaceMap(piece.Parts[0], 0.10);

        // A bar, the eye's bore and its side, the stone's seat; then a rail's flank, pushed out by the allowance.
        Assert.Equal(FaceKind.Kept, faces.KindAt(link.BarAxis + new Vec3(-hinge.BarMm / 2, 0, 0)));
        Assert.Equal(FaceKind.Kept, faces.KindAt(link.EyeCentre + new Vec3(0, 0, hinge.HoleMm / 2)));
        Assert.Equal(FaceKind.Kept, faces.KindAt(link.EyeCentre + new Vec3(hinge.HoleMm / 2 + 0.3, hinge.EyeWidthMm / 2, 0)));
        Assert.Equal(FaceKind.Polished, faces.KindAt(new Vec3(0, link.BaseHalfYMm + 0.10, link.RailMm / 2)));
        Assert.Equal(FaceKind.Polished, faces.KindAt(new Vec3(link.BaseHalfXMm * 0.4, link.BaseHalfYMm - 0.3, -0.10)));
    }

    [Theory]
    [MemberData(nameof(Lines))]
    public void Plates_hold_every_cast_part_inside_and_apart(string line)
    {
        var (plan, piece) = Of(line);
        var meshes = PatternsOf(line).Meshes;
        var process = piece.Design.Brief.Process;
        Assert.Equal(
            piece.Parts.Where(part => part.IsCast).Sum(part => part.Count),
            plan.Plates.Sum(plate => plate.Places.Length));
        foreach (var plate in plan.Plates)
        {
            var boxes = plate.Places.Select(place => meshes[place.Part].Moved(place.Pose).Bounds).ToList();
            Assert.All(boxes, box =>
            {
                Assert.True(box.Low is { X: > -1e-4, Y: > -1e-4, Z: > -1e-3 }, $"{box}"); // A foot is flat within a micron
                Assert.True(box.High.X < process.PlateXMm + 1e-4 && box.High.Y < process.PlateYMm + 1e-4 && box.High.Z < process.PlateZMm, $"{box}");
            });
            Apart(PatternsOf(line), plate.Places, process.PlateGapMm, partsOnly: false);
        }
    }

    [Theory]
    [MemberData(nameof(Lines))]
    public void Trees_hold_every_cast_part_apart(string line)
    {
        var (plan, piece) = Of(line);
        var process = piece.Design.Brief.Process;
        Assert.Equal(line.StartsWith('4') ? 1 : 2, plan.Trees.Length);
        Assert.Equal(piece.Parts.Where(part => part.IsCast).Sum(part => part.Count), plan.Trees.Sum(tree => tree.Places.Length));
        foreach (var tree in plan.Trees)
        {
            Assert.InRange(tree.Places.Length, 1, process.PartsPerTree);
            Assert.Equal(tree.Places.Length, tree.Rings.Sum(ring => ring.Count));
            var places = tree.Places.Select(place => (place.Part, plan.Parts[place.Part].Upright.Then(place.Pose))).ToList();
            Apart(PatternsOf(line), places, process.PlateGapMm, partsOnly: true);

            // Feet on the stem, parts over the button and inside the cylinder that is said.
            Assert.All(tree.Places, place => Assert.Equal(tree.StemMm / 2, Math.Sqrt(Math.Pow(place.Pose.Origin.X, 2) + Math.Pow(place.Pose.Origin.Y, 2)), 1e-9));
            foreach (var (part, pose) in places)
            {
                var box = PatternsOf(line).Meshes[part].Moved(pose);
                for (var i = 0; i < box.VertexCount; i += 7)
                {
                    var p = box.Vertex(i);
                    Assert.InRange(Math.Sqrt(p.X * p.X + p.Y * p.Y), 0, tree.WidthMm / 2 + 1e-3);
                    Assert.InRange(p.Z, tree.ButtonMm - 1e-3, tree.HeightMm + 1e-3);
                }
            }

            Assert.True(Modulus.OfHalfBall(tree.ButtonMm) >= 1.1 * Modulus.OfBar(tree.StemMm) - 1e-9);
        }
    }

    [Theory]
    [MemberData(nameof(Lines))]
    public void The_metal_to_weigh_out_is_what_hangs_and_what_feeds(string line)
    {
        var (plan, piece) = Of(line);
        var (report, alloy) = (plan.Report, piece.Design.Brief.Alloy);
        Assert.Equal(report.Trees.Sum(tree => tree.PartsG + tree.SpruesG + tree.StemG + tree.ButtonG), report.MetalToWeighOutG, 1e-9);
        var stems = plan.Trees.Sum(tree => Math.PI / 4 * tree.StemMm * tree.StemMm * tree.StemLengthMm + 2.0 / 3 * Math.PI * Math.Pow(tree.ButtonMm, 3));
        var all = plan.Parts.Sum(part => part.CastMm3 * part.Part.Count) + stems;
        Assert.Equal(alloy.DensityGPerCm3 * all / 1000, report.MetalToWeighOutG, 1e-6);

        // A caster weighs the patterns and multiplies: without stems and buttons that must come to the same.
        Assert.Equal(report.Trees.Sum(tree => tree.PartsG + tree.SpruesG), report.PatternsG * report.MetalPerPattern, 1e-6);
        Assert.Equal(alloy.DensityGPerCm3 / 1.09 * Math.Pow(0.994, 3), report.MetalPerPattern, 1e-9); // Castable resin 1.09, as read
        Assert.Equal(1 / 0.994, report.PatternScale, 1e-12);
    }

    [Fact]
    public void A_part_without_a_sprue_is_weighed_out_all_the_same_and_a_thin_stem_is_told()
    {
        // A safety of which finishing takes nothing shows no polished face, so that no gate is found on it.
        var usual = CheckedPieces.YellowCasting.Plan;
        var design = CheckedPieces.Design(4, "gold-750-yellow");
        var solved = LineDesign.Solve(design.Brief with { Process = design.Brief.Process with { StemMm = 2 } });
        var piece = PartsBuilder.Build(solved);
        piece = piece with { Parts = [.. piece.Parts.Select(part => part.Role == PartRole.Safety ? part with { AsCast = part.AsSet } : part)] };
        var plan = CastingPlans.Of(piece, stop: TestContext.Current.CancellationToken);
        var safety = plan.Parts.Single(part => part.Part.Role == PartRole.Safety);
        Assert.Null(safety.Site);
        Assert.Equal(safety.PartMm3, safety.CastMm3);
        Assert.Equal(usual.Trees.Sum(tree => tree.Places.Length) - 1, plan.Trees.Sum(tree => tree.Places.Length));
        Assert.Equal(plan.Report.Trees.Sum(tree => tree.TotalG) + solved.Brief.Alloy.MassOf(safety.PartMm3).Value, plan.Report.MetalToWeighOutG, 1e-9);
        Assert.Contains(plan.Report.Notes, note => note.StartsWith("safety: no polished face", StringComparison.Ordinal));
        Assert.Contains(plan.Report.Notes, note => note.StartsWith("a stem of 2.00 freezes before the thickest sprue", StringComparison.Ordinal));
        Assert.DoesNotContain(usual.Report.Notes, note => note.StartsWith("a stem", StringComparison.Ordinal));
    }

    [Fact]
    public void What_the_printer_gets_is_what_was_weighed()
    {
        // The patterns' meshes lie within 10 um of solids that are weighed with what lies between: flat triangles are a little light.
        var brief = CheckedPieces.Yellow.Piece.Design.Brief;
        var piece = PartsBuilder.Build(LineDesign.Solve(brief with { Process = brief.Process with { MeshDeviationUm = 10 } }));
        var patterns = CastingPlans.Patterns(CastingPlans.Of(piece, stop: TestContext.Current.CancellationToken), TestContext.Current.CancellationToken);
        var cubed = Math.Pow(patterns.Report.PatternScale, 3);
        Assert.All(patterns.Plan.Parts.Zip(patterns.Meshes), pair =>
        {
            Assert.Equal(1, MassProperties.Of(pair.Second).Volume / (pair.First.CastMm3 * cubed), 0.006);
            var box = pair.Second.Moved(pair.First.Upright).Bounds;
            Assert.True(pair.First.UprightBox.Grown(1e-3).Contains(box.Low) && pair.First.UprightBox.Grown(1e-3).Contains(box.High), pair.First.Part.Name);
        });
    }

    [Fact]
    public void Small_plates_are_filled_one_after_the_other_and_what_fits_on_none_is_said()
    {
        var parts = CheckedPieces.YellowCasting.Plan.Parts;
        var (plates, none) = PlateNesting.Of(parts, 30, 25, 100, 0.8);
        Assert.Empty(none);
        Assert.InRange(plates.Length, 2, 12);
        Assert.Equal(parts.Sum(part => part.Part.Count), plates.Sum(plate => plate.Places.Length));
        var (low, tooHigh) = PlateNesting.Of(parts, 100, 100, 5, 0.8);
        Assert.Empty(low);
        Assert.Equal([0, 1, 2, 3], tooHigh.Order());
    }

    [Fact]
    public void Squares_that_just_fill_a_plate_fill_it()
    {
        // Five by two of 9.2, 0.8 apart: 5 x 9.2 + 4 x 0.8 = 49.2, 2 x 9.2 + 0.8 = 19.2.
        var plate = new Skyline(49.2, 19.2, 0.8);
        for (var i = 0; i < 10; i++)
        {
            Assert.NotNull(plate.Place(9.2, 9.2));
        }

        Assert.Null(plate.Place(1, 1));
        Assert.Equal((0, 0, true), new Skyline(10, 5, 0).Place(4, 9)!.Value); // Only lying down
    }

    [Fact]
    public void Rectangles_on_a_plate_keep_their_gap()
        => Gen.Select(Gen.Double[0.5, 12], Gen.Double[0.5, 12]).Array[1, 40].Sample(
            sizes =>
            {
                var plate = new Skyline(40, 30, 0.8);
                var placed = new List<(double X, double Y, double W, double D)>();
                foreach (var (x, y) in sizes)
                {
                    if (plate.Place(x, y) is { } at)
                    {
                        var (w, d) = at.IsTurned ? (y, x) : (x, y);
                        Assert.True(at.X >= 0 && at.Y >= 0 && at.X + w <= 40 + 1e-6 && at.Y + d <= 30 + 1e-6);
                        Assert.All(placed, other => Assert.True(
                            at.X >= other.X + other.W + 0.8 - 1e-6 || other.X >= at.X + w + 0.8 - 1e-6
                            || at.Y >= other.Y + other.D + 0.8 - 1e-6 || other.Y >= at.Y + d + 0.8 - 1e-6));
                        placed.Add((at.X, at.Y, w, d));
                    }
                }
            },
            iter: 100);

    [Fact]
    public void Boxes_that_stand_askew_are_never_said_to_be_further_apart_than_they_are()
    {
        var box = new Bounds(new Vec3(-1, -1, -1), new Vec3(1, 1, 1));
        var still = new TiltedBox(box, Pose.Identity);
        Assert.Equal(1, TiltedBox.Gap(still, new TiltedBox(box, Pose.Move(3, 0, 0))), 1e-12);

        // Turned by half a right angle the corner comes 0.414 nearer.
        Assert.Equal(4 - 1 - Math.Sqrt(2), TiltedBox.Gap(still, new TiltedBox(box, Pose.Turn(Vec3.UnitZ, Math.PI / 4) with { Origin = new Vec3(4, 0, 0) })), 1e-12);
        Assert.True(TiltedBox.Gap(still, new TiltedBox(box, Pose.Turn(new Vec3(1, 2, 3), 1) with { Origin = new Vec3(1, 1, 1) })) <= 0);
    }

    private static (CastingPlan Plan, Piece Piece) Of(string line) => (PatternsOf(line).Plan, PatternsOf(line).Plan.Piece);

    private static CastingPatterns PatternsOf(string line) => line.StartsWith('4') ? CheckedPieces.YellowCasting : CheckedPieces.WhiteCasting;

    /// <summary>Feels every pair that is near with the solids themselves; the parts are enlarged, so poses are brought to their size.</summary>
    private static void Apart(CastingPatterns patterns, IReadOnlyList<(int Part, Pose Pose)> places, double gap, bool partsOnly)
    {
        var (plan, meshes, scale) = (patterns.Plan, patterns.Meshes, patterns.Report.PatternScale);
        var bodies = plan.Parts.Select((part, i) => new Body(part.Part.Name, part.Solid, ProbeSurface.Of(part.Solid, meshes[i].Scaled(1 / scale), 0.4))).ToList();
        var alone = plan.Parts.Select((part, i) => partsOnly
            ? new Body(part.Part.Name, part.Part.AsCast, ProbeSurface.Of(part.Part.AsCast, meshes[i].Scaled(1 / scale), 0.4, p => Math.Abs(part.Part.AsCast.Distance(p)) < 0.05))
            : bodies[i]).ToList();
        var reach = meshes.Select(mesh => mesh.Bounds.Size.Length / 2).ToList();
        var pairs = 0;
        for (var i = 0; i < places.Count; i++)
        {
            for (var j = 0; j < i; j++)
            {
                var (a, b) = (places[i], places[j]);
                var between = a.Pose.Point(meshes[a.Part].Bounds.Centre) - b.Pose.Point(meshes[b.Part].Bounds.Centre);
                if (between.Length > reach[a.Part] + reach[b.Part] + gap)
                {
                    continue;
                }

                pairs++;
                Pose poseA = a.Pose with { Origin = a.Pose.Origin / scale }, poseB = b.Pose with { Origin = b.Pose.Origin / scale };
                Assert.True(Felt(alone[a.Part], bodies[b.Part]) >= gap - 2e-3, $"{a} and {b}");
                if (partsOnly)
                {
                    Assert.True(Felt(bodies[a.Part], alone[b.Part]) >= gap - 2e-3, $"{a} and {b}");
                    Assert.True(Felt(bodies[a.Part], bodies[b.Part]) > 0, $"sprues of {a} and {b}");
                }

                double Felt(Body one, Body other) => scale * Clearance.Between([one], poseA, [other], poseB, 2).GapMm;
            }
        }

        Assert.InRange(pairs, places.Count / 2, places.Count * places.Count);
    }
}
