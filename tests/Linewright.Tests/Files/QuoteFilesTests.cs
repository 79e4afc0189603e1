using System.IO.Compression;
using System.Text;
using Linewright.Delivery;
using Linewright.Paper;
using Linewright.Quote;
using Linewright.Tests.Cli;
using Linewright.Tests.Core;
using MiniExcelLibs;

namespace Linewright.Tests.Files;

public class QuoteFilesTests
{
    private static readonly PieceQuote Worked = Quotes.Of(SamplePrices.Basis, SamplePrices.Worked);

    [Fact]
    public void Another_library_finds_in_the_workbook_what_the_quote_says()
    {
        using var book = new MemoryStream(Write(Worked)["quote.xlsx"]);
        Assert.Equal(["Quote", "Stones", "About"], book.GetSheetNames());
        var rows = book.Query(sheetName: "Quote").Cast<IDictionary<string, object?>>().Skip(1).ToList();
        foreach (var (line, row) in Worked.Lines.Zip(rows))
        {
            Assert.Equal(line.What, row["B"]);
            Assert.Equal((double)line.Quantity, Convert.ToDouble(row["C"], null), 1e-9);
            Assert.Equal((double)line.UnitPrice, Convert.ToDouble(row["E"], null), 1e-6);
            Assert.Equal((double)line.Amount, Convert.ToDouble(row["G"], null), 1e-6);
            Assert.Equal(line.Arithmetic, row["H"]);
        }

        var total = rows.Single(row => row["B"] as string == "total");
        Assert.Equal(8013.02, Convert.ToDouble(total["G"], null), 1e-9);
        var stones = book.Query(sheetName: "Stones").Cast<IDictionary<string, object?>>().ToDictionary(row => row["A"] as string ?? "", row => row["B"], StringComparer.Ordinal);
        Assert.Equal(50.0, Convert.ToDouble(stones["stones to buy"], null));
        var about = book.Query(sheetName: "About").Cast<IDictionary<string, object?>>().ToList();
        Assert.Equal(41.20, Convert.ToDouble(about.Single(row => row["A"] as string == "to melt, g")["B"], null), 1e-9);
        Assert.Equal(Worked.ShopNotes[0], about.Single(row => row["A"] as string == "how it was counted")["B"]);
    }

    [Fact]
    public void The_workbook_reckons_on_and_its_heading_stays_in_sight()
    {
        using var zip = new ZipArchive(new MemoryStream(Write(Worked)["quote.xlsx"]));
        using var reader = new StreamReader(zip.GetEntry("xl/worksheets/sheet1.xml")!.Open());
        var sheet = reader.ReadToEnd();
        Assert.Contains("state=\"frozen\"", sheet, StringComparison.Ordinal);
        Assert.Contains("<f>C2*E2/F2</f>", sheet, StringComparison.Ordinal);
        Assert.Contains(FormattableString.Invariant($"<f>ROUND(SUM(G2:G{Worked.Lines.Count + 1}),2)</f>"), sheet, StringComparison.Ordinal);
        Assert.DoesNotContain(zip.Entries, entry => entry.FullName.StartsWith("docProps", StringComparison.Ordinal)); // they would hold a date
    }

    [Fact]
    public void The_same_quote_gives_the_same_bytes()
    {
        var (first, second) = (Write(Worked), Write(Quotes.Of(SamplePrices.Basis, SamplePrices.Worked)));
        Assert.Equal(["quote-client.pdf", "quote.csv", "quote.json", "quote.xlsx"], first.Keys.Order(StringComparer.Ordinal));
        Assert.All(first, file => Assert.Equal(file.Value, second[file.Key]));
        Assert.All(first.Keys, name => Assert.Contains(name, QuoteFiles.Names));
    }

    [Fact]
    public void The_table_is_csv_as_rfc_4180_says()
    {
        // Source: RFC 4180 (2005), section 2: CRLF, as many fields in every row, quotes round commas.
        var text = Encoding.UTF8.GetString(Write(Worked)["quote.csv"]);
        Assert.EndsWith("\r\n", text, StringComparison.Ordinal);
        Assert.StartsWith("group,what,quantity,unit,unit_price,per,amount,currency,arithmetic,read_from\r\n", text, StringComparison.Ordinal);
        Assert.Contains("metal,\"castings, finished\",12.4,g,59.89,1,742.636,EUR,12.4 g x 59.89 = 742.636 EUR,", text, StringComparison.Ordinal);
        Assert.Contains("sum,total,,,,,8013.02,EUR,", text, StringComparison.Ordinal);
        Assert.All(text.TrimEnd().Split("\r\n"), row => Assert.Equal(10, Fields(row)));
    }

    [Fact]
    public void The_client_sees_the_price_and_no_line_of_cost()
    {
        using var page = new ScratchFile("quote.pdf", stream => stream.Write(Write(Worked)["quote-client.pdf"]));
        OutsideTools.CheckPdf(page.Path);
        var text = OutsideTools.PdfText(page.Path);
        Assert.Contains("8,013.02 EUR", text, StringComparison.Ordinal);
        Assert.Contains("with 20 % value added tax", text, StringComparison.Ordinal);
        Assert.Contains("2026-03-31", text, StringComparison.Ordinal);
        Assert.Contains("750 parts in a thousand of gold", text, StringComparison.Ordinal);
        Assert.Contains("not a binding offer", text, StringComparison.Ordinal);

        // To a thousandth, or 74 stones of 0.01 ct would weigh 0.94 together.
        Assert.Contains("stones about 0.100 ct each, 4.80 ct together", text, StringComparison.Ordinal);
        Assert.All((string[])["markup", "59.89", "600.00", "overhead", "bench", "refin", "flask", "this piece alone"], word => Assert.DoesNotContain(word, text, StringComparison.OrdinalIgnoreCase));
    }

    [Fact]
    public void A_quote_with_a_hole_has_no_page_for_the_client()
    {
        var holed = Quotes.Of(SamplePrices.Basis, SamplePrices.Worked with { OverheadPercent = null });
        var files = Write(holed);
        Assert.DoesNotContain("quote-client.pdf", files.Keys);
        Assert.Contains("missing,overhead_percent,", Encoding.UTF8.GetString(files["quote.csv"]), StringComparison.Ordinal);
        Assert.Throws<ArgumentException>(() => ClientPage.Of(holed, SampleReport.Resolved(), PaperSize.A4));
    }

    [Fact]
    public void The_page_for_the_client_is_on_the_paper_that_is_asked_for()
    {
        // Standard: PDF counts 72 to the inch; letter is 8 1/2 by 11 inches. The same words stand on both.
        var quote = Quotes.Of(SamplePrices.Basis, SamplePrices.Worked);
        using var letter = new MemoryStream();
        QuoteFiles.Write(quote, SampleReport.Resolved(), PaperSize.Letter, name => name == "quote-client.pdf" ? letter : new MemoryStream());
        Assert.Contains("/MediaBox [0 0 612 792]", Encoding.Latin1.GetString(letter.ToArray()), StringComparison.Ordinal);
        Assert.DoesNotContain("/MediaBox [0 0 612 792]", Encoding.Latin1.GetString(Write(quote)["quote-client.pdf"]), StringComparison.Ordinal);
    }

    [Fact]
    public void The_order_for_stones_is_one_row_with_its_words()
    {
        using var stream = new MemoryStream();
        QuoteFiles.WriteOrder(SamplePrices.Basis.Stones, stream);
        var rows = Encoding.UTF8.GetString(stream.ToArray()).TrimEnd().Split("\r\n");
        Assert.Equal(2, rows.Length);
        Assert.StartsWith("diamond,natural,round,3,2.94,3.04,+12 -12.5,48,4,2,50,0.1000,4.8,5,2.2,", rows[1], StringComparison.Ordinal);
        Assert.All(rows, row => Assert.Equal(18, Fields(row)));
    }

    private static Dictionary<string, byte[]> Write(PieceQuote quote)
    {
        var files = new Dictionary<string, MemoryStream>(StringComparer.Ordinal);
        QuoteFiles.Write(quote, SampleReport.Resolved(), name => files[name] = new MemoryStream());
        return files.ToDictionary(file => file.Key, file => file.Value.ToArray(), StringComparer.Ordinal);
    }

    // Commas outside quotes, plus one.
    private static int Fields(string row)
    {
        var (count, isQuoted) = (1, false);
        foreach (var letter in row)
        {
            isQuoted ^= letter == '"';
            count += letter == ',' && !isQuoted ? 1 : 0;
        }

        return count;
    }
}
