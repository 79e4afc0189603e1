using Linewright.Making;
using Linewright.Materials;

namespace Linewright.Tests.Core;

public class StoneOrderTests
{
    [Fact]
    public void Seats_take_a_spread_that_claws_and_neighbours_allow()
    {
        var order = StoneOrders.Of(CheckedPieces.Design(3.0, "gold-750-yellow"));
        Assert.InRange(order.SmallestMm, 2.9, 3.0);
        Assert.InRange(order.LargestMm, 3.0, 3.1);

        // Calculated for a claw of 0.81 mm (0.15 x 3.0 + 0.36) with its bearing 0.4 deep: to 0.3 on both sides, less two deviations of 0.05.
        Assert.Equal(3.0 - (2 * 0.1 * 0.81 - 2 * 0.05), order.SmallestMm, 1e-9);
        Assert.True(order.DeepestMm > order.DepthMm - 0.6);
    }

    [Fact]
    public void A_surer_workshop_takes_a_wider_lot()
    {
        var wide = StoneOrders.Of(CheckedPieces.Design(2.0, "gold-750-yellow", ",\"wrist\":{\"exponent\":2.4}"));
        var sure = StoneOrders.Of(LineOf(0.01));
        Assert.True(sure.SmallestMm < wide.SmallestMm);
        Assert.True(sure.LargestMm >= wide.LargestMm);

        static Linewright.Parts.LineDesign LineOf(double tolerance)
        {
            var design = CheckedPieces.Design(2.0, "gold-750-yellow");
            return Linewright.Parts.LineDesign.Solve(design.Brief with { Process = design.Brief.Process with { ToleranceMm = tolerance } });
        }
    }

    [Fact]
    public void Spares_are_whole_stones_rounded_up()
    {
        var order = StoneOrders.Of(CheckedPieces.Design(3.0, "gold-750-yellow"));
        Assert.Equal(4, order.SparePercent); // Common practice: 3 to 5 % of melee
        Assert.Equal((int)Math.Ceiling(order.Count * 0.04), order.Spares);
        Assert.Equal(order.Count + order.Spares, order.Order);
        Assert.Equal(order.Order * order.EachCt, order.OrderCt);

        // 1 ct = 0.2 g exactly. Source: metric carat, CGPM 4 (1907)
        Assert.Equal((double)order.SetCt * 0.2, new Carats((double)order.SetCt).ToGrams().Value, 1e-12);

        // A line of larger stones: one more, up to fifty.
        var large = StoneOrders.Of(CheckedPieces.Design(4.5, "gold-750-yellow"));
        Assert.Equal(1, large.Spares);
        Assert.Null(large.Sieve); // Source read: sieves are not used above about 0.20 ct
    }

    [Theory]
    [InlineData(2.0, "+7.5 -8")] // Source read: a published sieve chart, 2.00 to 2.10
    [InlineData(2.55, "+10 -10.5")] // 2.50 to 2.60
    public void Small_diamonds_are_asked_for_by_their_sieve(double diameter, string sieve)
    {
        var order = StoneOrders.Of(CheckedPieces.Design(diameter, "gold-750-yellow"));
        var lot = MaterialTables.Sieves.Find(order.Sieve!);
        Assert.True(lot.LowMm < order.LargestMm && lot.HighMm > order.SmallestMm);
        Assert.Contains(order.Sieve!, new[] { sieve, "+7 -7.5" });
    }

    [Theory]
    [InlineData("diamond", "natural")]
    [InlineData("laboratory-grown-diamond", "laboratory-grown")]
    [InlineData("cubic-zirconia", "manufactured")]
    [InlineData("moissanite", "manufactured")]
    [InlineData("ruby", "natural")]
    public void The_origin_is_said_in_a_word(string species, string origin)
        => Assert.Equal(origin, StoneOrders.OriginOf(MaterialTables.Species.Find(species)));

    [Fact]
    public void Sieve_lots_follow_each_other_and_grow_heavier()
    {
        foreach (var (lot, next) in MaterialTables.Sieves.All.Zip(MaterialTables.Sieves.All.Skip(1)))
        {
            Assert.Equal(lot.HighMm, next.LowMm);
            Assert.True(lot.EachCt < next.EachCt);

            // Within a third of the weight of a brilliant of the middle diameter, 0.00376 d^3: small lots are listed heavier.
            var middle = (lot.LowMm + lot.HighMm) / 2;
            Assert.True(middle < 1 || Math.Abs(lot.EachCt / (0.003757 * middle * middle * middle) - 1) < 0.36, lot.Key);
        }
    }
}
