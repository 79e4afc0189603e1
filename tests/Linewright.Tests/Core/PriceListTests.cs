using System.Text;
using Linewright.Quote;

namespace Linewright.Tests.Core;

public class PriceListTests
{
    [Fact]
    public void The_example_is_read_to_its_last_digit()
    {
        var list = SamplePrices.Example;
        Assert.Equal(("EUR", new DateOnly(2026, 3, 2), new DateOnly(2026, 3, 31)), (list.Currency.Key, list.Date, list.ValidUntil));
        Assert.Equal(36.40m, list.Alloys["platinum-950-ru"]);
        Assert.Equal(77.16m, list.Elements["Au"]);
        Assert.Contains("invented", list.Note, StringComparison.Ordinal);
        Assert.Equal(10, list.Operations.Count);
    }

    [Fact]
    public void The_schema_lies_in_the_examples_as_it_is_printed()
    {
        using var stream = new MemoryStream();
        PriceSchema.Write(stream);
        Assert.Equal(File.ReadAllText(Path.Combine(Repository.Root, "examples/linewright-prices.schema.json")), Encoding.UTF8.GetString(stream.ToArray()));
    }

    [Theory]
    [InlineData("\"currency\": \"EURO\"", "p.json:1:51: currency: read \"EURO\", expected one of 34 names, such as EUR; did you mean \"EUR\"?")]
    [InlineData("\"currency\": \"EUR\", \"overhead\": 20", "p.json:1:58: overhead: read an unknown field \"overhead\", expected a field of a price list; did you mean \"overhead_percent\"?")]
    [InlineData("\"currency\": \"EUR\", \"overhead_percent\": \"20\"", "p.json:1:78: overhead_percent: read \"20\", expected a number from 0 to 1000; write a plain number without quotes, unit or currency")]
    [InlineData("\"currency\": \"EUR\", \"overhead_percent\": -1", "p.json:1:78: overhead_percent: read -1, expected a number from 0 to 1000; write a plain decimal number within the range")]
    [InlineData("\"currency\": \"EUR\", \"currency\": \"USD\"", "p.json:1:58: currency: read \"currency\" a second time, expected every field once; remove one of the two")]
    [InlineData("\"currency\": \"EUR\", \"assay\": { }", "p.json:1:67: assay: read a group in braces, expected a list of rows in brackets; write [ { ... }, { ... } ]; [ ] says that nothing is charged")]
    [InlineData("\"currency\": \"EUR\", \"assay\": [ { \"family\": \"gold\" } ]", "p.json:1:69: assay[0].each: read nothing, expected a number from 0 to 1000000000; add \"each\"")]
    [InlineData("\"currency\": \"EUR\", \"valid_until\": \"2026-02-30\"", "p.json:1:73: valid_until: read \"2026-02-30\", expected a day as 2026-03-02; write year, month and day in quotes")]
    [InlineData("\"currency\": \"EUR\", \"valid_until\": \"2026-03-01\"", "p.json:1:73: valid_until: read 2026-03-01, expected a day from 2026-03-02 on; a quote cannot end before its prices begin")]
    [InlineData("\"currency\": \"EUR\",", "p.json:1:58: read a comma before }, expected another field; remove the comma before it")]
    public void A_fault_has_its_place_and_says_what_would_work(string rest, string message)
        => Assert.Equal([message], Read("{ \"name\": \"n\", \"date\": \"2026-03-02\",  " + rest + " }"));

    [Fact]
    public void Rows_that_answer_the_same_question_twice_are_refused_together()
    {
        const string text = """
            { "name": "n", "date": "2026-03-02", "currency": "EUR",
              "metal": { "alloys": [
                { "metal": "silver-925", "price_per_g": 1 },
                { "metal": "silver-925", "price_per_g": 2 } ] },
              "stones": [
                { "species": "diamond", "grade": "a", "from_mm": 1, "to_mm": 2, "per_ct": 1 },
                { "species": "diamond", "grade": "b", "from_mm": 1, "to_mm": 2, "per_ct": 1 },
                { "species": "diamond", "grade": "a", "from_mm": 1.9, "to_mm": 3, "each": 1 },
                { "species": "diamond", "grade": "a", "from_mm": 3, "to_mm": 3, "each": 1 },
                { "species": "ruby", "grade": "a", "from_mm": 3, "to_mm": 4 } ],
              "labour": { "operations": [ { "operation": "joint", "per": "joint", "minutes": 2, "rate": "bench" } ] } }
            """;
        Assert.Equal(
            [
                "p.json:4:5: metal.alloys[1]: read silver-925 a second time, expected every one once; remove one of the two rows",
                "p.json:8:54: stones[2].from_mm: read a band that overlaps stones[0], expected bands of diamond, a that only meet; that one runs from 1 to 2",
                "p.json:9:66: stones[3].to_mm: read 3, expected more than from_mm, 3; raise it, or lower from_mm",
                "p.json:10:5: stones[4]: read neither per_ct nor each, expected one price; add \"per_ct\" or \"each\"",
                "p.json:11:93: labour.operations[0].rate: read \"bench\", expected one of labour.rates; add \"rates\"",
            ],
            Read(text));
    }

    [Theory]
    [InlineData("", "p.json:1:1: read an empty file, expected a price list as JSON in UTF-8")]
    [InlineData("[]", "p.json:1:1: read a list in brackets, expected an object with the fields of a price list")]
    [InlineData("{ \"name\": ", "p.json:1:11: read the end of the file, expected the rest of the price list")]
    public void What_is_no_list_is_refused(string text, string begins)
        => Assert.StartsWith(begins, Assert.Single(Read(text)), StringComparison.Ordinal);

    private static List<string> Read(string text)
    {
        var result = PriceListReader.Read(Encoding.UTF8.GetBytes(text), "p.json");
        Assert.Equal(result.Faults.Count == 0, result.List is not null);
        return [.. result.Messages];
    }
}
