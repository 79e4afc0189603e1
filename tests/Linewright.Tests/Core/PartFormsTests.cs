using System.Globalization;
using System.Text.RegularExpressions;
using Linewright.Assembly;
using Linewright.Brief;
using Linewright.Checks;
using Linewright.Parts;
using Linewright.Solids.Meshing;
using Linewright.Solids.Space;

namespace Linewright.Tests.Core;

/// <summary>The choices behind the parts, and what the solids make of them.</summary>
public class PartFormsTests
{
    [Theory]
    [InlineData(1.5, "silver-925")]
    [InlineData(1.65, "brass-85")]
    [InlineData(1.3, "gold-750-yellow")]
    public void A_line_of_gaps_is_refused_and_its_ways_out_are_accepted(double diameter, string metal)
    {
        var refused = CheckedPieces.Design(diameter, metal);
        Assert.Null(refused.Chosen);

        // Assumed: stones further apart than 0.45 of their diameter no longer read as a line.
        Assert.True(refused.Hinge!.LeastPitchMm - diameter > 0.45 * diameter);
        Assert.Contains("take a metal that casts thinner", refused.Refusal, StringComparison.Ordinal);

        // Larger stones, and no larger than they must be.
        var stone = Named(refused.Refusal, @"take stones from ([\d.]+) mm up");
        Assert.Equal("", CheckedPieces.Design(stone, metal).Refusal);
        Assert.InRange(stone, diameter, diameter + 0.6);
        Assert.Null(CheckedPieces.Design(stone - 0.1, metal).Chosen);

        // Or gaps that were asked for, and no wider than they must be.
        var gap = Named(refused.Refusal, @"link\.stone_gap_max_mm to ([\d.]+)");
        var wide = CheckedPieces.Design(diameter, metal, FormattableString.Invariant($$""","link":{"stone_gap_max_mm":{{gap}}}"""));
        Assert.Equal("", wide.Refusal);
        Assert.InRange(wide.Chosen!.GapMm, gap - 0.011, gap + 0.2);
        Assert.Null(CheckedPieces.Design(diameter, metal, FormattableString.Invariant($$""","link":{"stone_gap_max_mm":{{gap - 0.01}}}""")).Chosen);
    }

    [Theory]
    [InlineData(1.5, "gold-750-yellow", HingeKind.PinnedKnuckles)]
    [InlineData(2, "gold-750-yellow", HingeKind.PinnedKnuckles)]
    [InlineData(2.5, "gold-750-yellow", HingeKind.EyeOverBar)]
    [InlineData(4, "gold-750-yellow", HingeKind.EyeOverBar)]
    [InlineData(6.5, "gold-585-white-pd", HingeKind.EyeOverBar)]
    [InlineData(2, "silver-925", HingeKind.PinnedKnuckles)]
    [InlineData(2.9, "silver-925", HingeKind.PinnedKnuckles)]
    [InlineData(3.0, "silver-925", HingeKind.EyeOverBar)]
    [InlineData(5, "silver-925", HingeKind.EyeOverBar)]
    public void Small_stones_hang_on_pins_and_larger_ones_on_bars(double diameter, string metal, HingeKind kind)
    {
        Assert.Equal(kind, CheckedPieces.Design(diameter, metal).Hinge!.Kind);

        // The brief has the last word.
        var other = kind == HingeKind.EyeOverBar ? ("pinned-knuckles", HingeKind.PinnedKnuckles) : ("eye-over-bar", HingeKind.EyeOverBar);
        Assert.Equal(other.Item2, CheckedPieces.Design(diameter, metal, $$""","hinge":{"kind":"{{other.Item1}}"}""").Hinge!.Kind);
    }

    [Theory]
    [InlineData("gold-750-yellow", 0.8)]
    [InlineData("platinum-950-ru", 0.8)]
    [InlineData("palladium-950-ru", 0.8)]
    [InlineData("silver-925", 0.85)]
    [InlineData("brass-85", 0.85)]
    public void The_box_has_the_wall_that_its_metal_casts(string metal, double wall)
    {
        var piece = CheckedPieces.Piece(3, metal);
        Assert.Equal(wall, piece.Design.Brief.Clasp.WallMm, 1e-9);

        // Floor and side, measured on the box where the tongue lies.
        var (clasp, box) = (piece.Clasp, piece[PartRole.Box].AsSet);
        var middle = (clasp.CavityMm + clasp.CatchMm) / 2;
        Assert.Equal(wall, Caliper.Thickness(box, new Vec3(middle, 0, wall / 3)), 1e-3);
        Assert.Equal(wall, Caliper.Thickness(box, new Vec3(middle, -clasp.WidthMm / 2 + wall / 3, clasp.HeightMm / 2)), 1e-3);
    }

    [Fact]
    public void Links_that_stand_high_are_cautioned_and_no_more()
    {
        // Source: height rule 0.68 d + 0.9, common practice; half a millimetre over it is let pass. Assumed.
        var low = Height(4, "gold-750-yellow");
        Assert.Equal(Verdict.Pass, low.Verdict);
        Assert.Equal(0.68 * 4 + 1.4, low.Limit!.Value, 1e-9);
        Assert.Empty(low.Cure);

        var high = Height(2, "silver-925");
        Assert.Equal(Verdict.Caution, high.Verdict);
        Assert.True(high.Measured > 0.68 * 2 + 1.4);
        Assert.Contains("hinge.bar_mm", high.Cure, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData(PartState.AsSet, 0.62)]
    [InlineData(PartState.AsCast, 0.72)] // The allowance for polishing, 0.10, all round.
    public void The_balls_that_the_safety_snaps_over_are_whole(PartState state, double radius)
    {
        var piece = CheckedPieces.Piece(3, "gold-750-yellow");
        Assert.Equal(0.62, SafetyBuilder.BallDiameterMm / 2, 1e-9);
        AssertWhole(PartRole.Tongue, SafetyBuilder.CarrierPostX(piece.Clasp));
        AssertWhole(PartRole.Box, SafetyBuilder.BoxPostX(piece.Clasp));

        void AssertWhole(PartRole role, double x)
        {
            var metal = state == PartState.AsSet ? piece[role].AsSet : piece[role].AsCast;
            var crown = Caliper.ToSurface(metal, new Vec3(x, 20, piece.Clasp.HeightMm / 2), -Vec3.UnitY);
            var centre = new Vec3(x, 20 - crown - radius, piece.Clasp.HeightMm / 2);

            // Every way but towards the neck, which is 0.8 thick and filleted.
            for (var latitude = 0; latitude < 12; latitude++)
            {
                for (var turn = 0; turn < 24; turn++)
                {
                    double y = 1 - latitude / 8.0, out1 = Math.Sqrt(1 - y * y), angle = turn * Math.PI / 12;
                    var way = new Vec3(out1 * Math.Cos(angle), y, out1 * Math.Sin(angle));
                    Assert.Equal(radius, Caliper.ToSurface(metal, centre, way), 2e-3);
                }
            }
        }
    }

    [Theory]
    [InlineData(1.5, "gold-750-yellow")]
    [InlineData(2, "gold-750-yellow")]
    [InlineData(2, "silver-925")]
    public void A_link_cut_through_between_eye_and_cheeks_keeps_a_wire_below_the_pavilion(double diameter, string metal)
    {
        var piece = CheckedPieces.Piece(diameter, metal);
        var (link, hinge, solid) = (piece.Link, piece.Hinge, piece[PartRole.Link].AsSet);
        Assert.True(link.IsSplit);

        // Up from the skin through the cut to where metal begins, then towards the stone.
        var y = hinge.EyeWidthMm / 2 + hinge.SideClearanceMm / 2;
        var floor = new Vec3(0, y, 0.05);
        Assert.True(solid.Distance(floor) > 0, "the cut is not open to the skin");
        var ceiling = floor + Vec3.UnitZ * Caliper.ToSurface(solid, floor, Vec3.UnitZ);
        var (away, normal) = piece.SeatedStone.Sense(ceiling);
        Assert.True(away - LinkForm.RailStoneClearMm >= LinkForm.WireMm, FormattableString.Invariant($"{away} mm from cut to stone"));

        // Metal all the way from the cut to the room round the stone.
        for (var share = 0.05; share < 1; share += 0.05)
        {
            var inside = ceiling - normal * (share * (away - LinkForm.RailStoneClearMm));
            Assert.True(solid.Distance(inside) < 0, FormattableString.Invariant($"no metal {share:0.00} of the way up"));
        }
    }

    private static Finding Height(double diameter, string metal)
    {
        var piece = CheckedPieces.Piece(diameter, metal);
        var none = new MeshOutcome { Status = MeshStatus.Meshed };
        var mesh = Mesher.Run(piece[PartRole.Link].AsSet, new MeshSettings(0.08, 0.03, false), stop: TestContext.Current.CancellationToken);
        var model = PieceModel.Of(piece, [.. piece.Parts.Select(part => part.Role == PartRole.Link ? mesh : none)]);
        var height = CheckModels.One(new LinkHeightCheck(), model, "link-height");
        Assert.Equal(piece.Link.TableHeightMm, height.Measured!.Value, 0.03);

        // Without a mesh nothing is measured, and nothing is said.
        Assert.Empty(new LinkHeightCheck().Run(PieceModel.Of(piece, [.. piece.Parts.Select(_ => none)]), TestContext.Current.CancellationToken));
        return height;
    }

    private static double Named(string refusal, string pattern)
    {
        var said = Regex.Match(refusal, pattern, RegexOptions.None, TimeSpan.FromSeconds(1));
        Assert.True(said.Success, refusal);
        return double.Parse(said.Groups[1].ValueSpan, CultureInfo.InvariantCulture);
    }
}
