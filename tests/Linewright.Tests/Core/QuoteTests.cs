using System.Text;
using CsCheck;
using Linewright.Brief;
using Linewright.Casting;
using Linewright.Materials;
using Linewright.Parts;
using Linewright.Quote;
using Linewright.Solids.Measures;
using Linewright.Solids.Meshing;

namespace Linewright.Tests.Core;

public class QuoteTests
{
    // Reckoned by hand in docs/notes/quote.md, to the last digit.
    [Theory]
    [InlineData("castings, finished", "742.636")]
    [InlineData("filed and polished off", "64.6812")]
    [InlineData("lost in the melt", "19.739744")]
    [InlineData("sprues, stems and buttons", "1640.411056")]
    [InlineData("sprues, stems and buttons, sent back", "-1574.79461376")]
    [InlineData("filings, refined", "-37.2563712")]
    [InlineData("the refiner's fee", "18")]
    [InlineData("patterns", "30.6")]
    [InlineData("casting", "14.828")]
    [InlineData("stones to be set, diamond, near colourless, eye clean", "2880")]
    [InlineData("spares, diamond, near colourless, eye clean", "120")]
    [InlineData("setting, claw", "168")]
    [InlineData("design", "45")]
    [InlineData("sprue cutting", "38.25")]
    [InlineData("clasp", "60")]
    [InlineData("welding wire and flux", "4.9")]
    [InlineData("assay and hallmark, 750", "12")]
    [InlineData("markup on metal and casting", "289.753504512")]
    [InlineData("markup on stones", "1050")]
    public void The_worked_example_comes_out_line_by_line(string what, string amount)
        => Assert.Equal(decimal.Parse(amount, System.Globalization.CultureInfo.InvariantCulture), Assert.Single(Quotes.Of(SamplePrices.Basis, SamplePrices.Worked).Lines, line => line.What == what).Amount);

    [Fact]
    public void Every_tree_fills_a_flask()
    {
        // At most 60 castings hang on a tree unless the brief says otherwise.
        QuoteLine Flasks(int onTree)
        {
            var design = CheckedPieces.Design(4, "gold-750-yellow");
            var brief = design.Brief with { Process = design.Brief.Process with { PartsPerTree = onTree } };
            var line = LineDesign.Solve(brief);
            var basis = QuoteBasis.Of(CastingPlans.Of(PartsBuilder.Build(line), stop: TestContext.Current.CancellationToken));
            return Assert.Single(Quotes.Of(basis, SamplePrices.Worked).Lines, row => row.What is "flask" or "flasks");
        }

        Assert.Equal((1m, 25m), (Flasks(60).Quantity, Flasks(60).Amount)); // 37 links, box, tongue, safety
        Assert.Equal((3m, 75m), (Flasks(19).Quantity, Flasks(19).Amount)); // 40 on trees of 19: one too many for two
    }

    [Fact]
    public void Every_plate_that_is_planned_is_printed_and_paid()
    {
        var design = CheckedPieces.Design(4, "gold-750-yellow");
        var line = LineDesign.Solve(design.Brief with { Process = design.Brief.Process with { PlateXMm = 40, PlateYMm = 25 } });
        var plan = CastingPlans.Of(PartsBuilder.Build(line), stop: TestContext.Current.CancellationToken);
        var row = Assert.Single(Quotes.Of(QuoteBasis.Of(plan), SamplePrices.Worked).Lines, row => row.What == "printed plates");
        Assert.True(plan.Plates.Length > 1);
        Assert.Equal((plan.Plates.Length, "plates", 22m * plan.Plates.Length), (row.Quantity, row.Unit, row.Amount));
    }

    [Fact]
    public void A_shop_is_told_what_was_counted_for_this_piece_alone()
    {
        var quote = Quotes.Of(SamplePrices.Basis with { Plates = 2 }, SamplePrices.Worked);
        Assert.Contains("Counted for this piece alone: 2 printed plates, 1 flask, one refining lot, one assay.", quote.ShopNotes[0], StringComparison.Ordinal);
        Assert.Contains("The 41.20 g to melt are 13.48 g of castings", quote.ShopNotes[1], StringComparison.Ordinal);
        Assert.DoesNotContain("assay", Quotes.Of(SamplePrices.Basis with { Metal = "brass-85" }, SamplePrices.Worked).ShopNotes[0], StringComparison.Ordinal);
        Assert.All(
            (string[])["printed plates", "flask", "the refiner's fee", "assay and hallmark, 750"],
            what => Assert.Contains("for this piece alone", Assert.Single(quote.Lines, line => line.What == what).Read, StringComparison.Ordinal));
    }

    [Fact]
    public void The_worked_example_is_rounded_once_on_its_last_line()
    {
        var quote = Quotes.Of(SamplePrices.Basis, SamplePrices.Worked);
        Assert.Empty(quote.Missing);
        Assert.Equal(4589.44501504m, decimal.Round(quote.Cost!.Value, 8));
        Assert.Equal(6677.518519552m, decimal.Round(quote.BeforeTax!.Value, 9));
        Assert.Equal(8013.02m, quote.Total); // 8013.0222234624
        Assert.Equal("8013.02 EUR", quote.Price().ToString());
        Assert.StartsWith("8013.022223 EUR, the sum of all lines unrounded", quote.Rounding, StringComparison.Ordinal);

        // Rounding every line first would have come to another cent here and there; nothing was rounded on the way.
        Assert.Equal(8013.0222234624m, decimal.Round(quote.Lines.Sum(line => line.Amount), 10));
    }

    [Fact]
    public void Every_line_is_quantity_times_price_and_says_so()
    {
        var quote = Quotes.Of(SamplePrices.Basis, SamplePrices.Worked);
        Assert.All(quote.Lines, line =>
        {
            Assert.Equal(line.Quantity * line.UnitPrice / line.Per, line.Amount);
            Assert.EndsWith(" EUR", line.Arithmetic, StringComparison.Ordinal);
            Assert.Contains(line.Amount.ToString("0.00####", System.Globalization.CultureInfo.InvariantCulture), line.Arithmetic, StringComparison.Ordinal);
            Assert.NotEmpty(line.Read);
        });
        var joint = quote.Lines.Single(line => line.What == "joint");
        Assert.Equal("49 joints x 2.5 min = 122.5 min; 122.5 min / 60 x 40.00 per hour = 81.666667 EUR", joint.Arithmetic);
        Assert.Equal("counted on the piece; labour.operations[4], rate bench", joint.Read);
    }

    [Fact]
    public void The_metal_that_is_melted_is_paid_once()
    {
        Gen.Select(Gen.Int[100, 9000], Gen.Int[0, 400], Gen.Int[30, 150]).Sample((finished, filed, tree) =>
        {
            decimal net = finished / 100m, cast = net + filed / 100m, melt = decimal.Round(cast * (1 + tree / 100m), 2);
            var quote = Quotes.Of(SamplePrices.Basis with { CastPartsG = net, CastG = cast, MeltG = melt }, SamplePrices.Worked);
            Assert.Equal(melt, quote.Lines.Where(line => line is { Group: QuoteGroup.Metal, Unit: "g", Quantity: >= 0 }).Sum(line => line.Quantity));
        });
    }

    [Fact]
    public void An_alloy_without_its_own_price_is_mixed_from_its_elements_by_mass()
    {
        // 18 ct yellow of the table: 75 Au, 12.5 Ag, 12.5 Cu. Calculated: (0.75 x 77.16 + 0.125 x 0.95 + 0.125 x 0.01) x 1.03.
        var line = Quotes.Of(SamplePrices.Basis, SamplePrices.Example).Lines[0];
        Assert.Equal((0.75m * 77.16m + 0.125m * 0.95m + 0.125m * 0.01m) * 1.03m, line.UnitPrice);
        Assert.Contains("75 % Au x 77.16", line.Arithmetic, StringComparison.Ordinal);

        // Rule of mixtures for the same alloy: 100 / (75 / 19.32 + 12.5 / 10.49 + 12.5 / 8.96) = 15.46 g/cm3; usual figure 15.45.
        Assert.Equal(100 / (75 / 19.32 + 12.5 / 10.49 + 12.5 / 8.96), MaterialTables.Alloys.Find("gold-750-yellow").MixtureDensity(), 1e-9);
    }

    [Fact]
    public void Every_missing_price_is_named_at_once_and_none_is_zero()
    {
        var bare = PriceListReader.Read("""{"name":"bare","date":"2026-03-02","currency":"EUR"}"""u8.ToArray(), "bare").List!;
        var quote = Quotes.Of(SamplePrices.Basis with { RhodiumUm = 0.3m }, bare);
        Assert.Null(quote.Total);
        Assert.Null(quote.Cost);
        Assert.Null(quote.Price());
        Assert.Empty(quote.Lines);
        Assert.Equal(
            [
                "assay", "casting", "findings", "labour.operations", "markup_percent.metal", "markup_percent.stones", "markup_percent.work", "metal.alloys", "metal.filings_recovered_percent",
                "metal.melt_loss", "metal.refining_fee", "metal.refund_percent", "other", "overhead_percent", "patterns.per_pattern", "patterns.per_plate", "plating.rhodium", "setting", "stones", "tax",
            ],
            quote.Missing.Select(missing => missing.Path).Distinct().Order(StringComparer.Ordinal));
        Assert.Equal(Enum.GetValues<Operation>().Length, quote.Missing.Count(missing => missing.Path == "labour.operations"));
        Assert.Contains(quote.Missing, missing => missing.Needed == "a row for joint with hinge eye-over-bar, 49 joints: per, minutes and rate");
    }

    [Fact]
    public void One_missing_price_takes_the_total_away_and_nothing_else()
    {
        var whole = Quotes.Of(SamplePrices.Basis, SamplePrices.Worked);
        var holed = Quotes.Of(SamplePrices.Basis, SamplePrices.Worked with { RefiningFee = null });
        Assert.Equal(["metal.refining_fee"], holed.Missing.Select(missing => missing.Path));
        Assert.Null(holed.Total);
        Assert.Equal(whole.Lines.Count - 1, holed.Lines.Count);
        Assert.Equal(whole.Total, Quotes.Of(SamplePrices.Basis, SamplePrices.Worked with { RefiningFee = 18 }).Total);
    }

    [Fact]
    public void A_grade_is_asked_for_only_where_the_list_has_two()
    {
        var second = SamplePrices.Worked.Stones[1] with { Path = "stones[99]", Grade = "finest", PerCt = 900 };
        var list = SamplePrices.Worked with { Stones = [.. SamplePrices.Worked.Stones, second] };
        Assert.Contains("\"near colourless, eye clean\", \"finest\"", Assert.Single(Quotes.Of(SamplePrices.Basis, list).Missing).Needed, StringComparison.Ordinal);
        Assert.Equal(48 * 0.1m * 900, Quotes.Of(SamplePrices.Basis, list, "finest").Lines.Single(line => line.What.StartsWith("stones to be set", StringComparison.Ordinal)).Amount);
        Assert.Contains("of grade \"plain\"", Assert.Single(Quotes.Of(SamplePrices.Basis, list, "plain").Missing).Needed, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("1.005", "EUR", "1.01 EUR")] // Half a cent goes up. Source: Council Regulation (EC) 1103/97, article 5; to even would be 1.00
    [InlineData("1.015", "EUR", "1.02 EUR")]
    [InlineData("1.0049999", "EUR", "1.00 EUR")]
    [InlineData("1234.5", "JPY", "1235 JPY")] // ISO 4217: the yen has no smaller unit
    [InlineData("2.0005", "KWD", "2.001 KWD")] // ISO 4217: a Kuwaiti dinar has 1000 fils
    public void Half_of_the_smallest_unit_goes_up(string amount, string currency, string rounded)
        => Assert.Equal(rounded, new Money(decimal.Parse(amount, System.Globalization.CultureInfo.InvariantCulture), MaterialTables.Currencies.Find(currency)).Rounded().ToString());

    [Theory]
    [InlineData("gold-750-yellow", 750)] // ISO 9202: 333, 375, 585, 750, 916, 990, 999 for gold
    [InlineData("gold-417-yellow", 375)] // 10 ct is no grade of it, and there is no minus tolerance
    [InlineData("silver-935-ge", 925)]
    [InlineData("platinum-950-ru", 950)]
    [InlineData("brass-85", null)]
    public void An_alloy_is_marked_with_the_grade_that_it_reaches(string alloy, int? grade)
        => Assert.Equal(grade, FinenessGrades.Of(MaterialTables.Alloys.Find(alloy)));

    [Fact]
    public void Brass_is_not_hallmarked_and_platinum_takes_its_own_setting_row()
    {
        var brass = Quotes.Of(SamplePrices.Basis with { Metal = "brass-85" }, SamplePrices.Worked);
        Assert.DoesNotContain(brass.Lines, line => line.Group == QuoteGroup.Assay);
        Assert.Empty(brass.Missing);
        Assert.Equal(48 * 4.90m, Quotes.Of(SamplePrices.Basis with { Metal = "platinum-950-ru" }, SamplePrices.Worked).SumOf(QuoteGroup.Setting));
    }

    [Fact]
    public void A_cell_of_a_grid_costs_what_it_costs_alone()
    {
        var axes = new GridAxis[] { new("metal", ["gold-750-yellow", "gold-750-rose"]), new("length.laid_flat_mm", ["165", "101"]) };
        var briefs = QuoteGrids.Combinations(axes).Select(values => Resolve(values[0], 3, values[1])).ToList();
        var grid = QuoteGrids.Run(axes, briefs, SamplePrices.Example, null, isChecked: false, stop: TestContext.Current.CancellationToken);
        Assert.Equal(4, grid.Cells.Count);
        Assert.Equal(["gold-750-yellow", "101"], grid.Cells[1].Values);
        foreach (var (cell, brief) in grid.Cells.Zip(briefs))
        {
            var design = LineDesign.Solve(brief);
            var alone = Quotes.Of(QuoteBasis.Of(CastingPlans.Of(PartsBuilder.Build(design), stop: TestContext.Current.CancellationToken)), SamplePrices.Example);
            Assert.True(cell.CanBeMade);
            Assert.Equal((alone.Total, alone.Cost, alone.Basis.FinishedG), (cell.Total, cell.Cost, cell.FinishedG));
        }
    }

    [Fact]
    public void A_cell_for_which_no_line_closes_says_why()
    {
        var axes = new GridAxis[] { new("stone.diameter_mm", ["1.2"]) };
        var cell = Assert.Single(QuoteGrids.Run(axes, [Resolve("silver-925", 1.2, "170")], SamplePrices.Example, null, isChecked: false, stop: TestContext.Current.CancellationToken).Cells);
        Assert.False(cell.CanBeMade);
        Assert.Null(cell.Total);
        Assert.StartsWith("no line closes: stones of 1.2 mm would stand", Assert.Single(cell.Reasons), StringComparison.Ordinal);
    }

    [Fact]
    public void Coarse_weighing_agrees_with_a_fine_mesh()
    {
        // Cells of 40 um with what lies between mesh and surface, against cells of 80 and 120 um likewise.
        var stop = TestContext.Current.CancellationToken;
        var piece = CheckedPieces.Piece(3.0, "gold-750-yellow");
        Assert.All(CastingPlans.Of(piece, stop: stop).Weights, part =>
        {
            var fine = MassProperties.Of(Mesher.Run(part.Part.AsSet, new MeshSettings(0.04, 1, false), stop: stop).Mesh, part.Part.AsSet).Volume;
            Assert.Equal(1, part.FinishedMm3 / fine, 3e-4);
            Assert.True(!part.Part.IsCast || part.CastMm3 > part.FinishedMm3, part.Part.Name);
        });
    }

    // The line was 3 um narrower at its own pitch than at the preferred one, and the clasp too short for its tongue by 5 um.
    [Fact]
    public void A_line_whose_clasp_is_as_short_as_it_may_be_is_built_all_the_same()
    {
        var design = LineDesign.Solve(Resolve("gold-750-white-pd", 3.5, "160"));
        var piece = PartsBuilder.Build(design);
        Assert.Equal(design.Chosen!.ClaspMm, piece.Clasp.LengthMm);
        Assert.True(piece.Link.WidthMm < design.LineWidthMm);
    }

    private static ResolvedBrief Resolve(string metal, double diameter, string length)
    {
        var json = FormattableString.Invariant($$"""{"name":"t","stone":{"diameter_mm":{{diameter}} },"metal":"{{metal}}","length":{"laid_flat_mm":{{length}} } }""");
        return BriefDefaults.Resolve(BriefReader.Read(Encoding.UTF8.GetBytes(json), "t").Brief!);
    }
}
