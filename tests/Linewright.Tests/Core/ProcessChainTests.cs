using Linewright.Materials;

namespace Linewright.Tests.Core;

/// <summary>The chain of steps as arithmetic: what the tables say, backwards to the pattern and forwards again.</summary>
public class ProcessChainTests
{
    public static TheoryData<string> Routes => [.. MaterialTables.Routes.Keys];

    [Theory]
    [InlineData("gold", 0.6)] // Common practice: gold 0.4 to 1.0 %
    [InlineData("silver", 1.25)]
    [InlineData("platinum", 1.75)]
    public void The_usual_route_enlarges_by_the_metals_shrinkage_and_leaves_a_tenth_for_polish(string family, double shrink)
    {
        var chain = ProcessChain.Of("printed-resin", MaterialTables.Processes.Find(family).LinearShrinkPercent);
        Assert.Equal(1 / (1 - shrink / 100), chain.PatternScale); // A length is divided by 1 - shrinkage
        Assert.Equal(shrink, chain.ShrinkPercent);
        Assert.Equal(0.10, chain.AllowanceMm(FaceKind.Polished));
        Assert.Equal(0.05, chain.SizeSpreadMm, 1e-12);
    }

    [Theory]
    [MemberData(nameof(Routes))]
    public void What_goes_back_to_the_pattern_comes_forward_to_the_same_length(string route)
    {
        foreach (var chain in new[] { ProcessChain.Of(route, 1.75), ProcessChain.Of(route, 0.6).WithTotals(3.1, 0.13) })
        {
            foreach (var face in Enum.GetValues<FaceKind>())
            {
                foreach (var finished in (double[])[0.5, 3.42, 177.8])
                {
                    var pattern = (finished + 2 * chain.AllowanceMm(face)) * chain.PatternScale;
                    Assert.Equal(finished, chain.Forward(pattern, face), 1e-8);
                }
            }
        }
    }

    [Fact]
    public void A_bracelet_is_drawn_longer_by_division_not_by_multiplication()
        => Assert.Equal(178.87324, 177.8 * ProcessChain.Of("printed-resin", 0.6).PatternScale, 1e-5); // 177.8 / 0.994, not 178.8668. Calculated.

    [Fact]
    public void A_rubber_mould_shrinks_on_top_of_the_casting()
    {
        var chain = ProcessChain.Of("carved-wax-mould", 0.6);
        Assert.Equal(100 * (1 - 0.975 * 0.994), chain.ShrinkPercent, 1e-9); // 2.5 % and 0.6 % one after the other: 3.085 %
        Assert.Equal(0.10, chain.AllowanceMm(FaceKind.Polished)); // Lost in metal, after all shrinking
    }

    [Theory]
    [MemberData(nameof(Routes))]
    public void A_shop_that_measured_the_whole_is_believed(string route)
    {
        var chain = ProcessChain.Of(route, 0.6).WithTotals(0.9, 0.07);
        Assert.Equal(0.9, chain.ShrinkPercent, 1e-9);
        Assert.Equal(0.07, chain.AllowanceMm(FaceKind.Polished), 1e-9);
        Assert.Equal(0, chain.AllowanceMm(FaceKind.Kept));
    }

    [Theory]
    [MemberData(nameof(Routes))]
    public void Every_route_has_a_pattern_one_casting_and_a_finish(string route)
    {
        var row = MaterialTables.Routes.Find(route);
        var steps = row.Steps.Select(MaterialTables.Steps.Find).ToList();
        Assert.Equal("investment-casting", Assert.Single(steps, step => step.ShrinkPercent is null).Key);
        Assert.Contains(steps[0].Key, new[] { "printed-resin", "printed-wax", "carved-wax" });
        Assert.Equal(["tumbling", "polishing"], row.Steps.TakeLast(2));

        // Metal is lost only once there is metal, and never from a bearing: the parts keep those faces as cast.
        Assert.All(steps.TakeWhile(step => step.ShrinkPercent is not null), step => Assert.Equal(0, step.PolishedLossMm));
        Assert.All(steps, step => Assert.Equal(0, step.KeptLossMm));
    }

    [Fact]
    public void A_mould_scatters_more_than_a_print_alone()
    {
        var alone = ProcessChain.Of("printed-resin", 0.6);
        var moulded = ProcessChain.Of("printed-resin-mould", 0.6);
        Assert.True(moulded.SizeSpreadMm > alone.SizeSpreadMm);
        Assert.Equal(Math.Sqrt(0.05 * 0.05 + 0.4 * 0.4 + 0.1 * 0.1) / 100, moulded.ScaleSpread, 1e-12); // Root of the sum of squares
    }

    [Fact]
    public void Every_row_says_where_it_comes_from()
        => Assert.All(
            MaterialTables.Steps.All.Concat<IMaterialRow>(MaterialTables.Routes.All).Concat(MaterialTables.Fits.All),
            row => Assert.True(row.Source.Length > 10 && Marks.All.Contains(row.Mark), row.Key));
}
