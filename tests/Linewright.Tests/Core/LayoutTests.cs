using System.Globalization;
using System.Text.RegularExpressions;
using CsCheck;
using Linewright.Layout;
using Linewright.Solids.Space;

namespace Linewright.Tests.Core;

public class LayoutTests
{
    // Seven inches of 4 mm stones. Source: worked example of common practice, 25.4 mm to the inch.
    private static readonly LineTask SevenInches = new(
        4.0, 7 * 25.4, GapPreferredMm: 0.5, GapMinMm: 0.35, GapMaxMm: 0.65, ClaspMinMm: 10, ClaspIdealMm: 11.5, ClaspMaxMm: 14,
        HingeHeightMm: 2.0, PlayMm: 0.05, StoneCt: 0.24);

    private static readonly Gen<LineTask> Tasks = Gen.Select(
        Gen.Double[0.8, 8], Gen.Double[60, 500], Gen.Double[0.1, 0.6], Gen.Double[0, 0.15], Gen.Double[0, 0.15], Gen.Double[4, 12], Gen.Double[0, 5], Gen.Double[0, 3],
        (d, length, gap, less, more, clasp, span, height) => new LineTask(
            d, length, gap, Math.Max(0, gap - less), gap + more, clasp, clasp + span / 2, clasp + span, height, 0.05, 0.1));

    private static readonly Gen<HingeChain> Chains = Gen.Select(Gen.Int[10, 60], Gen.Double[2, 6], Gen.Double[4, 12], Gen.Double[0, 2.5],
        (count, pitch, clasp, height) => new HingeChain(count, pitch, clasp, height));

    [Fact]
    public void Seven_inches_of_four_mm_stones_take_38_links_where_a_short_clasp_will_do()
    {
        // Common practice: 38 x 4.5 leaves 6.8.
        var best = LinePlanner.Plan(SevenInches with { ClaspMinMm = 6, ClaspIdealMm = 7 }).Best!;
        Assert.Equal(38, best.Count);
        Assert.Equal(6.8, best.ClaspMm, 1e-9);
        Assert.Equal(4.5, best.PitchMm, 1e-12);
        Assert.Equal("keeps the 0.50 mm gap; the clasp is 6.8 mm long", best.Reason);
    }

    [Fact]
    public void With_a_tongue_that_lasts_37_links_come_first_and_38_are_tightened()
    {
        // Calculated: 177.8 - 37 x 4.5 = 11.3; 38 links reach a 10 mm clasp at a pitch of 167.8 / 38.
        var plan = LinePlanner.Plan(SevenInches);
        Assert.Null(plan.Refusal);
        Assert.Equal(37, plan.Best!.Count);
        Assert.Equal(11.3, plan.Best.ClaspMm, 1e-9);
        Assert.True(plan.Best.KeepsPreferredGap);
        var tightened = Assert.Single(plan.Candidates, c => c.Count == 38);
        Assert.Equal(167.8 / 38, tightened.PitchMm, 1e-12);
        Assert.Equal("pitch tightened by 0.08 mm so that the clasp reaches 10.0 mm; at the 0.50 mm gap 6.8 mm would be left for it", tightened.Reason);
        Assert.Equal(38 * 0.24, tightened.StonesCt, 1e-12);
        Assert.Equal(39 * 2 * 0.05, tightened.PlayTotalMm, 1e-12);
    }

    [Fact]
    public void A_count_that_does_not_do_says_why()
    {
        var plan = LinePlanner.Plan(SevenInches with { GapMinMm = 0.45, ClaspMinMm = 10.5 });
        var miss = Assert.Single(plan.Misses, m => m.Count == 38);
        Assert.Equal(6.8, miss.ClaspMm, 1e-9);
        Assert.Equal(
            "38 links leave 6.8 mm, too short for a tongue that lasts (10.5 mm needed); the gap would have to shrink to 0.40 mm, below 0.45 mm",
            miss.Reason);
    }

    [Fact]
    public void Forty_eight_links_of_3_60_and_a_clasp_of_5_make_seven_inches()
    {
        // Calculated: 48 x 3.60 + 5.0 = 177.8.
        var best = LinePlanner.Plan(SevenInches with { StoneDiameterMm = 3.2, GapPreferredMm = 0.4, ClaspMinMm = 4, ClaspIdealMm = 5, ClaspMaxMm = 6 }).Best!;
        Assert.Equal(48, best.Count);
        Assert.Equal(5.0, best.ClaspMm, 1e-9);
    }

    [Fact]
    public void A_length_between_two_counts_is_refused_with_its_neighbours()
    {
        var task = SevenInches with { LaidFlatMm = 38.0, StoneDiameterMm = 8, GapPreferredMm = 0.5, GapMinMm = 0.5, GapMaxMm = 0.5, ClaspMaxMm = 12 };
        var plan = LinePlanner.Plan(task);
        Assert.Empty(plan.Candidates);
        Assert.Null(plan.Best);

        // By hand: 3 links reach 25.5 + 12 = 37.5 at most, 4 links 34 + 10 = 44 at least.
        Assert.Equal(37.5, plan.Refusal!.NearestShorterMm!.Value, 1e-9);
        Assert.Equal(44.0, plan.Refusal.NearestLongerMm!.Value, 1e-9);
        Assert.EndsWith("the nearest that work are 37.50 and 44.00 mm", plan.Refusal.Reason, StringComparison.Ordinal);
        Assert.NotNull(LinePlanner.Plan(task with { LaidFlatMm = 37.5 }).Best);
        Assert.NotNull(LinePlanner.Plan(task with { LaidFlatMm = 44.0 }).Best);
    }

    [Fact]
    public void Lengths_that_a_refusal_names_are_accepted_as_they_are_printed()
        => Tasks.Where(t => LinePlanner.Plan(t).Refusal is not null).Sample(task =>
        {
            var reason = LinePlanner.Plan(task).Refusal!.Reason;
            var advised = Regex.Matches(reason[reason.LastIndexOf(';')..], @"\d+\.\d+", RegexOptions.NonBacktracking).Select(number => double.Parse(number.Value, CultureInfo.InvariantCulture)).ToList();
            Assert.NotEmpty(advised);
            Assert.All(advised, length => Assert.NotNull(LinePlanner.Plan(task with { LaidFlatMm = length }).Best));
        }, iter: 200);

    [Fact]
    public void A_length_that_may_not_be_asked_for_is_not_advised()
    {
        var task = SevenInches with { LaidFlatMm = 38.0, StoneDiameterMm = 8, GapPreferredMm = 0.5, GapMinMm = 0.5, GapMaxMm = 0.5, ClaspMaxMm = 12 };
        var refusal = LinePlanner.Plan(task with { ShortestAskedMm = 38 }).Refusal!;
        Assert.Null(refusal.NearestShorterMm);
        Assert.EndsWith("the shortest that works is 44.00 mm", refusal.Reason, StringComparison.Ordinal);
        refusal = LinePlanner.Plan(task with { LongestAskedMm = 43 }).Refusal!;
        Assert.Null(refusal.NearestLongerMm);
        Assert.EndsWith("the longest that works is 37.50 mm", refusal.Reason, StringComparison.Ordinal);
    }

    [Fact]
    public void A_change_of_pitch_is_never_said_to_be_nothing()
        => Gen.Double[-0.3, 0.3].Select(Gen.Int[1, 9], (share, power) => share * Math.Pow(10, -power)).Sample(slip =>
        {
            // 37 links at the preferred gap leave 11.3 mm: limits a hair beside that ask for a hair of pitch.
            var plan = LinePlanner.Plan(SevenInches with { ClaspMinMm = 11.3 + slip, ClaspIdealMm = 11.3 + slip, ClaspMaxMm = 11.3 + slip });
            Assert.All(plan.Candidates, c => Assert.DoesNotMatch(@"by 0\.0+ mm", c.Reason));
        });

    [Fact]
    public void No_sentence_speaks_of_less_than_nothing()
        => Tasks.Sample(task =>
        {
            var plan = LinePlanner.Plan(task);
            Assert.All([.. plan.Candidates.Select(c => c.Reason), .. plan.Misses.Select(m => m.Reason)], reason => Assert.DoesNotMatch(@"-\d|leave 0\.0 mm|; .*\b0\.0 mm would", reason));
        });

    [Theory]
    [InlineData(4e-3, "pitch tightened by 0.004 mm")]
    [InlineData(4e-4, "pitch tightened by 0.0004 mm")]
    [InlineData(4e-6, "keeps the 0.50 mm gap to a hair; the clasp is 11.3 mm long, its limit")]
    public void A_small_change_of_pitch_is_said_with_its_digits(double change, string said)
    {
        var clasp = 11.3 + 37 * change;
        Assert.StartsWith(said, LinePlanner.Plan(SevenInches with { ClaspMinMm = clasp, ClaspIdealMm = clasp + 0.1, ClaspMaxMm = clasp + 0.2 }).Candidates.Single(c => c.Count == 37).Reason, StringComparison.Ordinal);
    }

    [Fact]
    public void A_line_shorter_than_any_names_the_shortest()
    {
        var refusal = LinePlanner.Plan(SevenInches with { LaidFlatMm = 12 }).Refusal!;
        Assert.Null(refusal.NearestShorterMm);
        Assert.Equal(2 * 4.35 + 10, refusal.NearestLongerMm!.Value, 1e-9);
    }

    [Fact]
    public void Limits_that_contradict_each_other_are_refused_not_thrown()
    {
        Assert.Contains("preferred gap", LinePlanner.Plan(SevenInches with { GapPreferredMm = 0.9 }).Refusal!.Reason, StringComparison.Ordinal);
        Assert.Contains("ideal clasp", LinePlanner.Plan(SevenInches with { ClaspIdealMm = 20 }).Refusal!.Reason, StringComparison.Ordinal);
        Assert.Throws<ArgumentOutOfRangeException>(() => LinePlanner.Plan(SevenInches with { StoneDiameterMm = double.NaN }));
        Assert.Throws<ArgumentOutOfRangeException>(() => LinePlanner.Plan(SevenInches with { LaidFlatMm = -1 }));
    }

    [Fact]
    public void Every_candidate_closes_within_its_limits()
        => Tasks.Sample(task => LinePlanner.Plan(task).Candidates.All(c =>
            Math.Abs(c.Count * c.PitchMm + c.ClaspMm - task.LaidFlatMm) <= 1e-9
            && c.GapMm >= task.GapMinMm - 1e-8 && c.GapMm <= task.GapMaxMm + 1e-8
            && c.ClaspMm >= task.ClaspMinMm - 1e-8 && c.ClaspMm <= task.ClaspMaxMm + 1e-8));

    [Fact]
    public void No_count_that_works_is_overlooked()
        => Tasks.Sample(task =>
        {
            // By trying: a count works where some gap within its limits leaves a clasp within its own.
            // A count that misses by a rounding may be taken or left.
            int Works(double slackMm) => Enumerable.Range(2, 700).Count(n =>
                n * (task.StoneDiameterMm + task.GapMinMm) + task.ClaspMinMm <= task.LaidFlatMm + slackMm
                && n * (task.StoneDiameterMm + task.GapMaxMm) + task.ClaspMaxMm >= task.LaidFlatMm - slackMm);
            var plan = LinePlanner.Plan(task);
            return plan.CandidateCount >= Works(-2e-9) && plan.CandidateCount <= Works(2e-9) && (plan.Refusal is null) == (plan.CandidateCount > 0);
        });

    [Fact]
    public void No_candidate_stands_before_one_that_gives_up_less_of_pitch_and_of_clasp()
        => Tasks.Sample(task =>
        {
            var rank = LinePlanner.Plan(task).Candidates.Select(c => (Pitch: Math.Abs(c.StretchMm), Clasp: Math.Abs(c.ClaspMm - task.ClaspIdealMm))).ToList();
            return rank.Index().All(later => rank.Take(later.Index).All(earlier
                => !(earlier.Pitch > later.Item.Pitch + 1e-9 && earlier.Clasp > later.Item.Clasp + 1e-9)));
        });

    [Fact]
    public void A_small_change_of_pitch_beats_a_clasp_that_is_far_too_long()
    {
        // 36 links keep the gap with a clasp of 15.8 mm; 37 tightened by 0.05 mm leave 13.2 mm.
        var plan = LinePlanner.Plan(SevenInches with { ClaspMinMm = 13.2, ClaspIdealMm = 13.6, ClaspMaxMm = 18 });
        Assert.Equal(37, plan.Best!.Count);
        Assert.False(plan.Best.KeepsPreferredGap);
    }

    [Fact]
    public void A_refused_length_has_neighbours_that_work()
        => Tasks.Where(t => LinePlanner.Plan(t).Refusal is { NearestShorterMm: not null, NearestLongerMm: not null }).Sample(task =>
        {
            var refusal = LinePlanner.Plan(task).Refusal!;
            return refusal.NearestShorterMm < task.LaidFlatMm && task.LaidFlatMm < refusal.NearestLongerMm
                && LinePlanner.Plan(task with { LaidFlatMm = refusal.NearestShorterMm.Value }).Best is not null
                && LinePlanner.Plan(task with { LaidFlatMm = refusal.NearestLongerMm.Value }).Best is not null;
        }, iter: 50);

    [Fact]
    public void A_line_of_a_metre_and_a_half_is_planned_to_its_last_link()
    {
        var task = SevenInches with { LaidFlatMm = 1500, StoneDiameterMm = 1.2, GapPreferredMm = 0.3, GapMinMm = 0.2, GapMaxMm = 0.4 };
        var best = LinePlanner.Plan(task).Best!;
        Assert.True(best.Count > 900);
        Assert.Equal(1500, best.Count * best.PitchMm + best.ClaspMm, 1e-9);
    }

    [Fact]
    public void The_worked_line_lies_on_a_wrist_of_26_235()
    {
        // Calculated by hand from the closing equation: 38 links of 4.5, clasp 6.8, hinges 2.0 over the skin.
        var fit = RoundFit.Solve(38, 4.5, 6.8, 2.0);
        Assert.Equal(26.235, fit.RadiusMm, 5e-4);
        Assert.Equal(164.84, fit.InsideCircumferenceMm, 5e-3);
        Assert.Equal(9.11, fit.HingeAngleDeg, 5e-3);
        Assert.True(fit.ClaspHingeAngleDeg > fit.HingeAngleDeg);

        // All turns together are a full turn.
        Assert.Equal(360, 37 * fit.HingeAngleDeg + 2 * fit.ClaspHingeAngleDeg, 1e-9);
    }

    [Theory]
    [InlineData(48, 169.667114)] // Calculated: 2 N (r + e) tan(pi / N), r = 160 / 2 pi, e = 1.5
    [InlineData(30, 170.046824)] // Calculated, same formula
    public void A_ring_of_equal_rigid_pieces_is_longer_than_the_smooth_one(int pieces, double length)
    {
        var fit = RoundFit.Solve(pieces - 1, length / pieces, length / pieces, 1.5);
        Assert.Equal(160, fit.InsideCircumferenceMm, 1e-5);

        // Steiner: a smooth curve moved out by e grows by 2 pi e, here to 169.424778; rigid pieces add (pi / N)^2 / 3.
        Assert.Equal(169.424778, length / (1 + Math.Pow(Math.PI / pieces, 2) / 3), 3e-3);
    }

    [Fact]
    public void Moving_a_form_out_adds_two_pi_times_the_distance()
    {
        // Steiner (1840): 160 + 2 pi 1.5 = 169.424778. Measured on a fine polygon around the superellipse.
        var form = WristForm.OfCircumference(160);
        const int steps = 20_000;
        Vec3 Out(int i) => form.Point(2 * Math.PI * i / steps) + form.Normal(2 * Math.PI * i / steps) * 1.5;
        Assert.Equal(169.424778, Enumerable.Range(0, steps).Sum(i => (Out(i + 1) - Out(i)).Length), 1e-4);
    }

    [Fact]
    public void A_line_for_a_wrist_has_the_length_that_its_height_asks_for()
    {
        // Calculated: wrist 160, ease 12.7, hinges 1.5 over the skin: 182.124778 if smooth; rigid pieces add a little.
        var task = SevenInches with { HingeHeightMm = 1.5, StoneDiameterMm = 1.0, GapPreferredMm = 0.3, GapMinMm = 0.2, GapMaxMm = 0.4, ClaspMinMm = 1.2, ClaspIdealMm = 1.3, ClaspMaxMm = 1.6 };
        var best = LinePlanner.PlanForWrist(task, 172.7).Best!;
        Assert.Equal(182.124778 * (1 + Math.Pow(Math.PI / (best.Count + 1), 2) / 3), best.LaidFlatMm, 2e-3);
    }

    [Fact]
    public void A_plan_for_a_wrist_meets_the_inside_exactly()
        => Gen.Select(Tasks, Gen.Double[130, 220]).Sample((task, inside) =>
            LinePlanner.PlanForWrist(task, inside).Candidates.All(c =>
                Math.Abs(c.Fit.InsideCircumferenceMm - inside) < 1e-9
                && Math.Abs(c.LaidFlatMm - c.Count * c.PitchMm - c.ClaspMm) < 1e-9
                && c.ClaspMm >= task.ClaspMinMm - 1e-8 && c.ClaspMm <= task.ClaspMaxMm + 1e-8));

    [Fact]
    public void Forwards_and_backwards_agree()
    {
        var forwards = LinePlanner.Plan(SevenInches).Best!;
        var backwards = LinePlanner.PlanForWrist(SevenInches with { LaidFlatMm = double.NaN }, forwards.Fit.InsideCircumferenceMm).Best!;
        Assert.Equal(forwards.Count, backwards.Count);
        Assert.Equal(forwards.ClaspMm, backwards.ClaspMm, 1e-9);
        Assert.Equal(177.8, backwards.LaidFlatMm, 1e-9);
    }

    [Fact]
    public void A_wrist_that_no_count_meets_has_neighbours_that_work()
    {
        var task = SevenInches with { StoneDiameterMm = 9, GapMinMm = 0.5, GapMaxMm = 0.5, ClaspMaxMm = 12 };
        var refusal = Enumerable.Range(140, 60).Select(c => LinePlanner.PlanForWrist(task, c)).First(p => p.Refusal is not null).Refusal!;
        Assert.NotNull(LinePlanner.PlanForWrist(task, refusal.NearestShorterMm!.Value).Best);
        Assert.NotNull(LinePlanner.PlanForWrist(task, refusal.NearestLongerMm!.Value).Best);
    }

    [Fact]
    public void An_ellipse_has_ramanujans_perimeter()
    {
        // Ramanujan (1914), second approximation, a = 28, b = 22.4: 158.825340. Calculated.
        Assert.Equal(158.825340, new WristForm(28, 0.8, 2).PerimeterMm, 1e-5);

        // The same solved for circumference 160 at ratio 0.75. Calculated.
        Assert.Equal(28.954701, WristForm.OfCircumference(160, 0.75, 2).HalfBreadthMm, 1e-5);
        Assert.Equal(2 * Math.PI * 7, new WristForm(7, 1, 2).PerimeterMm, 1e-9);
    }

    [Fact]
    public void A_superellipse_is_as_long_as_a_fine_polygon_in_it()
        => Gen.Select(Gen.Double[0.5, 1], Gen.Double[2, 4]).Sample((ratio, exponent) =>
        {
            var form = new WristForm(25, ratio, exponent);
            const int steps = 4000;
            Vec3 On(int i) => form.Point(2 * Math.PI * i / steps);
            return Math.Abs(Enumerable.Range(0, steps).Sum(i => (On(i + 1) - On(i)).Length) - form.PerimeterMm) < 2e-4
                && Math.Abs(Enumerable.Range(0, steps).Max(i => On(i).Dot(new Vec3(0.6, 0, 0.8))) - form.Support(new Vec3(0.6, 0, 0.8))) < 1e-3;
        }, iter: 20);

    [Fact]
    public void Around_a_circle_with_a_clasp_like_a_link_it_is_the_round_fit()
        => Gen.Select(Gen.Int[8, 80], Gen.Double[2, 6], Gen.Double[0, 2]).Sample((count, pitch, height) =>
        {
            var round = RoundFit.Solve(count, pitch, pitch, height);
            var wrist = WristFit.Solve(new HingeChain(count, pitch, pitch, height), 1, 2).Fit!;
            return Math.Abs(wrist.Form.HalfBreadthMm - round.RadiusMm) < 1e-9
                && Math.Abs(wrist.LargestHingeAngle - round.HingeAngle) < 1e-9
                && wrist.ClaspSagittaMm < 1e-9;
        }, iter: 30);

    [Fact]
    public void With_a_longer_clasp_the_two_models_differ_by_hundredths()
    {
        // The difference that RoundFit's remarks state.
        double Difference(int count, double clasp)
            => WristFit.Solve(new HingeChain(count, 4.5, clasp, 2), 1, 2).Fit!.Form.HalfBreadthMm - RoundFit.Solve(count, 4.5, clasp, 2).RadiusMm;
        Assert.InRange(Difference(38, 6.8), 0.003, 0.006);
        Assert.InRange(Difference(37, 11.3), 0.02, 0.04);
    }

    [Fact]
    public void Around_a_wrist_neighbours_share_their_hinge_points()
        => Gen.Select(Chains, Gen.Double[0.65, 0.85], Gen.Double[2, 3]).Sample((chain, ratio, exponent) =>
        {
            var result = WristFit.Solve(chain, ratio, exponent);
            return chain.LaidFlatMm < 60 || result is { Fits: true, Fit.Placements: var placements }
                && HingesMeet(chain, placements, closed: true);
        }, iter: 60);

    [Fact]
    public void Around_a_wrist_no_link_presses_in_and_one_touches()
        => Gen.Select(Chains.Where(c => c.LaidFlatMm > 80), Gen.Double[0.65, 0.85], Gen.Double[2, 3]).Sample((chain, ratio, exponent) =>
        {
            var fit = WristFit.Solve(chain, ratio, exponent).Fit!;
            var points = Enumerable.Range(0, 3000).Select(i => fit.Form.Point(2 * Math.PI * i / 3000)).ToList();
            var room = fit.Placements.Where(p => !p.IsClasp).Min(p => points.Min(q => -p.Pose.Inverse().Point(q).Z));
            return room is > -1e-9 and < 2e-3 && Math.Abs(fit.HingeAngles.Sum() - 2 * Math.PI) < 1e-9;
        }, iter: 15);

    [Fact]
    public void On_the_usual_wrist_the_clasp_lies_below_and_hinges_turn_more_than_on_a_circle()
    {
        var chain = new HingeChain(37, 4.5, 11.3, 2.0);
        var fit = WristFit.Solve(chain).Fit!;
        var clasp = fit.Placements[^1];
        Assert.True(clasp.IsClasp);
        Assert.Equal(37, clasp.Index);
        Assert.Equal(0, clasp.Pose.Origin.X, 1e-9);
        Assert.True(clasp.Pose.Origin.Z < -15);
        Assert.True((clasp.Pose.AxisZ + Vec3.UnitZ).Length < 1e-9);
        Assert.True((fit.Placements[18].Pose.AxisX - Vec3.UnitX).Length < 1e-9);
        Assert.All(fit.Placements, p => Assert.False(p.Pose.IsMirrored));
        Assert.InRange(fit.LargestHingeAngleDeg, 9.5, 25);
        Assert.InRange(fit.InsideCircumferenceMm, 163, 166.5);

        // The sagitta is what pokes through the clasp's straight skin side, measured on points of the form.
        var poke = Enumerable.Range(0, 40_000).Max(i => clasp.Pose.Inverse().Point(fit.Form.Point(2 * Math.PI * i / 40_000)).Z);
        Assert.Equal(poke, fit.ClaspSagittaMm, 1e-6);
        Assert.InRange(poke, 0.02, 0.3);
        Assert.Equal(fit.HingeAngles[5], fit.HingeAngles[^6], 1e-9);
    }

    [Fact]
    public void Skin_sides_close_by_twice_the_height_times_the_tangent_of_half_the_turn()
    {
        // Calculated: 2 x 1.2 x tan(15 degrees) = 0.643078. Twelve equal pieces turn by 30 degrees each.
        var placements = WristFit.Solve(new HingeChain(11, 5, 5, 1.2), 1, 2).Fit!.Placements;
        var neighbour = placements[0].Pose.Then(placements[1].Pose.Inverse()).Inverse();

        // Where the neighbour's skin line crosses this one's, in this link's frame.
        var start = neighbour.Point(new Vec3(-2.5, 0, 0));
        var direction = neighbour.Direction(Vec3.UnitX);
        var crossing = start.X - start.Z / direction.Z * direction.X;
        Assert.Equal(0.643078, 2 * (2.5 - crossing), 1e-6);
    }

    [Fact]
    public void A_line_too_short_for_its_height_is_told_so()
    {
        var result = WristFit.Solve(new HingeChain(3, 2, 2, 5));
        Assert.Equal(FitStatus.LineTooShort, result.Status);
        Assert.NotEmpty(result.Reason);
        Assert.Equal(FitStatus.LineTooShort, WristFit.Solve(new HingeChain(2, 2, 9, 0)).Status);
    }

    [Fact]
    public void Laid_flat_the_line_is_as_long_as_planned()
        => Chains.Sample(chain =>
        {
            var placements = FlatFit.Solve(chain).Placements;
            var length = End(chain, placements[^1]).X - Start(chain, placements[0]).X;
            return Math.Abs(length - chain.LaidFlatMm) < 1e-9 && HingesMeet(chain, placements, closed: false)
                && placements[0].Pose.Origin.Length < 1e-12 && (placements[0].Pose.AxisX - Vec3.UnitX).Length < 1e-12 && placements.All(p => Math.Abs(p.Pose.Origin.Z) < 1e-12);
        }, iter: 100);

    [Fact]
    public void Along_a_wide_arc_the_hinge_points_lie_on_the_curve()
    {
        var chain = new HingeChain(30, 4.5, 10, 2);
        var result = CurveFit.Solve(chain, Arc(120), double.DegreesToRadians(8));
        Assert.True(result.Fits, result.Reason);
        Assert.True(HingesMeet(chain, result.Fit.Placements, closed: false));
        Assert.All(result.Fit.Placements, p => Assert.Equal(120, double.Hypot(Start(chain, p).X, Start(chain, p).Y), 1e-3));
        Assert.Equal(Math.Asin(4.5 / 240) + Math.Asin(10 / 240.0), result.Fit.LargestTurn, 1e-3);
        Assert.All(result.Fit.Placements, p => Assert.Equal(Vec3.UnitZ, p.Pose.AxisZ));
    }

    [Fact]
    public void A_bend_too_tight_is_refused_with_the_smallest_radius_that_works()
    {
        var chain = new HingeChain(30, 4.5, 10, 2);
        var limit = double.DegreesToRadians(3);
        var result = CurveFit.Solve(chain, Arc(60), limit);
        Assert.Equal(FitStatus.CurveTooTight, result.Status);

        // Chords of a circle: half angles asin(p / 2r) and asin(Lc / 2r) add up to the limit.
        Assert.Equal(limit, Math.Asin(2.25 / result.SmallestRadiusMm) + Math.Asin(5 / result.SmallestRadiusMm), 1e-9);
        Assert.True(CurveFit.Solve(chain, Arc(result.SmallestRadiusMm * 1.01), limit).Fits);
        Assert.False(CurveFit.Solve(chain, Arc(result.SmallestRadiusMm * 0.99), limit).Fits);
    }

    [Fact]
    public void A_curve_that_ends_early_is_named()
    {
        var result = CurveFit.Solve(new HingeChain(10, 4.5, 10, 2), [Vec3.Zero, new Vec3(20, 0, 0)], 0.1);
        Assert.Equal(FitStatus.CurveTooShort, result.Status);
        Assert.Contains("after 4 of 10 links", result.Reason, StringComparison.Ordinal);
    }

    private static List<Vec3> Arc(double radius)
        => [.. Enumerable.Range(0, 20_000).Select(i => new Vec3(radius * Math.Cos(i * 3.0 / 20_000), radius * Math.Sin(i * 3.0 / 20_000), 0))];

    private static double Length(HingeChain chain, LinkPlacement p) => p.IsClasp ? chain.ClaspMm : chain.PitchMm;

    private static Vec3 Start(HingeChain chain, LinkPlacement p) => p.Pose.Point(new Vec3(-Length(chain, p) / 2, 0, chain.HingeHeightMm));

    private static Vec3 End(HingeChain chain, LinkPlacement p) => p.Pose.Point(new Vec3(Length(chain, p) / 2, 0, chain.HingeHeightMm));

    private static bool HingesMeet(HingeChain chain, IReadOnlyList<LinkPlacement> placements, bool closed)
        => Enumerable.Range(0, placements.Count - (closed ? 0 : 1)).All(i =>
            (End(chain, placements[i]) - Start(chain, placements[(i + 1) % placements.Count])).Length < 1e-9
            && Math.Abs(placements[i].Pose.AxisX.Cross(placements[i].Pose.AxisY).Dot(placements[i].Pose.AxisZ) - 1) < 1e-12);
}
