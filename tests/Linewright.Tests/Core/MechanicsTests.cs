using CsCheck;
using Linewright.Checks;
using Linewright.Parts;

namespace Linewright.Tests.Core;

public class MechanicsTests
{
    [Fact]
    public void A_cantilever_bends_as_the_handbook_says()
    {
        // E 90000, section 3 x 0.5, length 8, force 2. Calculated from Roark, end load: F L3 / 3 E I.
        var moment = Beam.RectangleMm4(3, 0.5);
        Assert.Equal(0.03125, moment, 1e-12);
        Assert.Equal(0.121363, Beam.CantileverDeflectionMm(2, 8, 90000, moment), 1e-6);
        Assert.Equal(128.0, Beam.CantileverStressMPa(2, 8, 0.5, moment), 1e-9);
    }

    [Fact]
    public void A_pin_between_cheeks_bends_as_the_handbook_says()
    {
        // Round pin 0.8, span 3, force 20, E 90000. Calculated from Roark, centre load: F L3 / 48 E I, fixed ends / 192.
        var moment = Beam.RoundMm4(0.8);
        Assert.Equal(0.0201062, moment, 1e-7);
        Assert.Equal(0.00621699, Beam.SupportedDeflectionMm(20, 3, 90000, moment), 1e-8);
        Assert.Equal(0.00155425, Beam.FixedDeflectionMm(20, 3, 90000, moment), 1e-8);
        Assert.Equal(298.416, Beam.SupportedStressMPa(20, 3, 0.8, moment), 1e-3);
        Assert.Equal(298.416 / 2, Beam.FixedStressMPa(20, 3, 0.8, moment), 1e-3);
    }

    [Fact]
    public void A_bar_integrated_from_its_curvature_bends_as_the_formula_says()
    {
        // Independent of the closed form: w'' = M / E I, integrated in small steps along a cantilever.
        double moment = Beam.RectangleMm4(2, 0.6), slope = 0, deflection = 0;
        const int Steps = 20_000;
        const double Length = 7, Force = 3, Modulus = 80_000;
        for (var i = 0; i < Steps; i++)
        {
            var at = (i + 0.5) * Length / Steps;
            slope += Force * (Length - at) / (Modulus * moment) * Length / Steps;
            deflection += slope * Length / Steps;
        }

        Assert.Equal(Beam.CantileverDeflectionMm(Force, Length, Modulus, moment), deflection, deflection * 1e-4);
    }

    [Fact]
    public void A_pin_in_double_shear_bears_the_worked_example()
    {
        // Diameter 0.8 at 115 MPa: two sections of 0.502655 mm2. Calculated.
        Assert.Equal(1.005310, PinShear.AreaMm2(0.8), 1e-6);
        Assert.Equal(115.611, PinShear.ForceN(0.8, 115), 1e-3);
        Assert.Equal(115, PinShear.StressMPa(115.611, 0.8), 1e-3);
        Assert.Equal(1 / Math.Sqrt(3), PinShear.YieldMPa(1), 5e-4); // von Mises: tau = sigma / square root of 3.
    }

    [Theory]
    [InlineData(0.3, 7.07)] // Hard 18 ct gold at a design strain of 0.54 %, press 0.6. Calculated.
    [InlineData(0.4, 8.16)]
    [InlineData(0.5, 9.13)]
    public void A_tongue_needs_a_leaf_long_enough_for_its_thickness(double thickness, double length)
        => Assert.Equal(length, TongueSpring.LeastLengthMm(thickness, 0.6, 0.0054), 5e-3);

    [Fact]
    public void A_tongue_of_0_4_pressed_0_6_over_8_is_just_past_its_enduring_strain()
    {
        // E 90000, width 3. Calculated: strain 0.5625 %, stress 506.25 MPa, force 5.0625 N.
        Assert.Equal(0.005625, TongueSpring.Strain(0.4, 0.6, 8), 1e-12);
        Assert.Equal(506.25, TongueSpring.StressMPa(90_000, 0.4, 0.6, 8), 1e-9);
        Assert.Equal(5.0625, TongueSpring.ForceN(90_000, 3, 0.4, 0.6, 8), 1e-9);

        // Hard 18 ct gold, yield 700: 0.78 % at yield, 0.54 % to endure. Calculated.
        Assert.Equal(0.0078, TongueSpring.YieldStrain(700, 90_000), 5e-5);
        Assert.Equal(0.0054, TongueSpring.EnduringStrain(700, 90_000), 5e-5);
        Assert.InRange(0.005625, TongueSpring.EnduringStrain(700, 90_000), TongueSpring.YieldStrain(700, 90_000));

        // Annealed, yield 300: 0.33 %: it takes a set.
        Assert.True(TongueSpring.YieldStrain(300, 90_000) < 0.005625);
    }

    [Fact]
    public void A_tongue_is_a_cantilever_with_its_deflection_given()
        => Gen.Select(Gen.Double[0.2, 0.6], Gen.Double[0.1, 1], Gen.Double[5, 15], Gen.Double[1, 6]).Sample((t, d, length, width) =>
        {
            var moment = Beam.RectangleMm4(width, t);
            var force = TongueSpring.ForceN(90_000, width, t, d, length);
            Assert.Equal(d, Beam.CantileverDeflectionMm(force, length, 90_000, moment), 1e-9);
            Assert.Equal(TongueSpring.StressMPa(90_000, t, d, length), Beam.CantileverStressMPa(force, length, t, moment), 1e-6);
            Assert.Equal(length, TongueSpring.LeastLengthMm(t, d, TongueSpring.Strain(t, d, length)), 1e-9);
        });

    [Theory]
    [InlineData(0.0, 1.0)]
    [InlineData(0.5, 0.4795001222)] // 1 - erf. Source: Abramowitz and Stegun (1964), table 7.1, erf 0.5204998778.
    [InlineData(1.0, 0.1572992070)] // Same table, erf 0.8427007930 (0.84270 07929 as printed).
    [InlineData(2.0, 0.0046777350)] // Same table, erf 0.9953222650.
    [InlineData(3.0, 2.209049700e-5)] // From memory.
    [InlineData(5.0, 1.537459794e-12)] // From memory.
    [InlineData(-1.0, 1.8427007930)]
    public void The_error_function_agrees_with_tables(double x, double expected)
        => Assert.Equal(expected, NormalLaw.Erfc(x), 2e-8 * expected); // As many digits as the table has.

    [Theory]
    [InlineData(1.0, 0.158655254)] // Source: Abramowitz and Stegun (1964), table 26.1.
    [InlineData(1.96, 0.024997895)]
    [InlineData(3.0, 0.001349898)]
    [InlineData(-1.0, 0.841344746)]
    public void The_tail_of_the_normal_law_agrees_with_tables(double deviations, double expected)
        => Assert.Equal(expected, NormalLaw.Above(deviations), 1e-9);

    [Fact]
    public void The_two_ways_to_the_error_function_meet_where_they_change_over()
    {
        double below = NormalLaw.Erfc(Math.BitDecrement(2.0)), at = NormalLaw.Erfc(2.0);
        Assert.Equal(below, at, at * 1e-13);
        Gen.Double[0.01, 6].Sample(x =>
        {
            // The derivative of erfc is known in closed form.
            const double Step = 1e-4;
            var slope = (NormalLaw.Erfc(x + Step) - NormalLaw.Erfc(x - Step)) / (2 * Step);
            var exact = -2 / Math.Sqrt(Math.PI) * Math.Exp(-x * x);
            Assert.Equal(exact, slope, Math.Abs(exact) * 1e-6 + 1e-11);
        });
    }

    [Fact]
    public void A_line_runs_free_only_if_every_joint_does()
    {
        // 38 joints at three deviations: 0.998650^38. Source: Abramowitz and Stegun (1964), table 26.1.
        Assert.Equal(Math.Pow(0.998650102, 38), RunningFit.AllRunFree(38, 0.09, 0.03), 1e-7);
        Assert.Equal(1, RunningFit.AllRunFree(38, 0.09, 0));
        Assert.Equal(0, RunningFit.AllRunFree(38, -0.01, 0));
        Assert.Equal(0.05, RunningFit.SigmaMm(0.03, 0.04), 1e-12);
    }

    [Fact]
    public void A_simulated_lot_of_bracelets_runs_free_as_often_as_predicted()
    {
        // Independent of the law's formula: normal errors as sums of twelve even ones, ten thousand bracelets of 20 joints.
        var random = new Random(11);
        const int Lot = 10_000, Joints = 20;
        int free = 0;
        for (var piece = 0; piece < Lot; piece++)
        {
            var least = double.PositiveInfinity;
            for (var joint = 0; joint < Joints; joint++)
            {
                var sum = -6.0;
                for (var k = 0; k < 12; k++)
                {
                    sum += random.NextDouble();
                }

                least = Math.Min(least, 0.05 + 0.025 * sum);
            }

            free += least >= 0 ? 1 : 0;
        }

        // One deviation of the count is 0.5 %; sums of twelve are a little short in the tail.
        Assert.Equal(RunningFit.AllRunFree(Joints, 0.05, 0.025), (double)free / Lot, 0.02);
    }

    [Fact]
    public void The_clearance_asked_for_gives_the_probability_asked_for()
        => Gen.Select(Gen.Int[1, 60], Gen.Double[0.005, 0.1], Gen.Double[0.5, 0.9999], Gen.Double[0, 0.05]).Sample((joints, sigma, wanted, least) =>
        {
            var clearance = RunningFit.ClearanceForMm(joints, sigma, wanted, least);
            Assert.Equal(wanted, RunningFit.AllRunFree(joints, clearance, sigma, least), 1e-9);
        });

    [Fact]
    public void A_thin_ring_under_pull_has_the_handbook_moments()
    {
        // For a ring far larger than its wall curved beam theory becomes 6 M / w t2. Source: Roark, circular rings, loading 1.
        const double Hole = 40, Wall = 0.2, Width = 2, Force = 5;
        var radius = (Hole + Wall) / 2;
        var section = Width * Wall * Wall / 6;
        var stress = RingPull.Stress(Force, Hole, Wall, Width);
        Assert.Equal(0.3183 * Force * radius / section, stress.CrownMPa, stress.CrownMPa * 5e-3);
        Assert.Equal(0.1817 * Force * radius / section + Force / (2 * Wall * Width), stress.SideMPa, stress.SideMPa * 5e-3);
    }

    [Fact]
    public void The_stress_of_a_curved_bar_balances_its_moment()
    {
        // Independent of the closed form: Winkler and Bach take the strain as linear over radius, so the stress is
        // k (r - n) / r; its force over the section is zero and its moment the one given. Integrated numerically.
        const double Inner = 0.55, Outer = 1.35, Width = 1.4;
        var stress = RingPull.Stress(20, 2 * Inner, Outer - Inner, Width);
        var neutral = (Outer - Inner) / Math.Log(Outer / Inner);
        var k = stress.CrownMPa * Outer / (Outer - neutral);
        double force = 0, moment = 0;
        const int Steps = 100_000;
        for (var i = 0; i < Steps; i++)
        {
            var r = Inner + (i + 0.5) * (Outer - Inner) / Steps;
            var share = k * (r - neutral) / r * Width * (Outer - Inner) / Steps;
            force += share;
            moment += share * (r - neutral);
        }

        Assert.Equal(0, force, 1e-6);
        Assert.Equal(20 * 0.95 / Math.PI, moment, 1e-5);
    }

    [Fact]
    public void An_eye_bears_more_the_thicker_it_is_and_never_more_than_its_walls_alone()
    {
        Gen.Select(Gen.Double[0.8, 1.6], Gen.Double[0.3, 1], Gen.Double[0.8, 2]).Sample((hole, wall, width) =>
        {
            var stress = RingPull.Stress(30, hole, wall, width);
            Assert.True(stress.WorstMPa > RingPull.DirectMPa(30, wall, width));
            Assert.True(RingPull.Stress(30, hole, wall * 1.1, width).WorstMPa < stress.WorstMPa);
            Assert.Equal(30, RingPull.ForceN(stress.WorstMPa, hole, wall, width), 1e-9);
        });
    }

    [Fact]
    public void Bend_relief_follows_the_worked_example_and_back()
    {
        // Reach 1.2, 30 degrees: 0.643078 mm. Calculated: 2 h tan(angle / 2).
        Assert.Equal(0.643078, BendRelief.GapMm(1.2, Math.PI / 6), 1e-6);
        Assert.Equal(Math.PI / 6, BendRelief.Angle(1.2, 0.643078), 1e-6);
    }

    [Fact]
    public void Nonsense_is_refused()
    {
        Assert.Throws<ArgumentOutOfRangeException>(() => Beam.RoundMm4(0));
        Assert.Throws<ArgumentOutOfRangeException>(() => TongueSpring.Strain(0.4, 0.6, double.NaN));
        Assert.Throws<ArgumentOutOfRangeException>(() => RunningFit.AllRunFree(-1, 0.1, 0.01));
        Assert.Throws<ArgumentOutOfRangeException>(() => RingPull.Stress(10, 1.1, -0.8, 1.4));
    }
}
