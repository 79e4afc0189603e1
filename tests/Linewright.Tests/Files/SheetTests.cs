using System.Collections.Concurrent;
using System.Globalization;
using System.Xml;
using Linewright.Assembly;
using Linewright.Checks;
using Linewright.Delivery;
using Linewright.Files;
using Linewright.Making;
using Linewright.Paper;
using Linewright.Sheets;
using Linewright.Solids.Meshing;
using Linewright.Solids.Outlines;
using Linewright.Tests.Core;

namespace Linewright.Tests.Files;

/// <summary>The technical sheet of real lines: what is on it, that it can be read, and its files before outside readers.</summary>
public class SheetTests
{
    private static readonly ConcurrentDictionary<double, Lazy<Made>> Known = new();

    private static readonly PaperSize[] Papers = [PaperSize.A4, PaperSize.Letter];

    [Theory]
    [InlineData(1.5)]
    [InlineData(3.0)]
    [InlineData(4.0)]
    [InlineData(6.5)]
    public void No_text_lies_on_another_and_none_leaves_the_frame(double diameter)
    {
        foreach (var paper in Papers)
        {
            var sheet = Of(diameter).Draw(paper);
            Assert.InRange(sheet.Document.Pages.Length, 4, 7);
            foreach (var page in sheet.Document.Pages)
            {
                // ISO 5457: the frame is 20 mm from the left edge and 10 from the others.
                var frame = new PaperBox(20, 10, page.Size.WidthMm - 10, page.Size.HeightMm - 10);
                var labels = page.Marks.OfType<Label>().ToList();
                Assert.True(labels.Count > 15);
                Assert.All(labels, label => Assert.True(frame.Contains(label.Box), $"'{label.Text}' leaves the frame of {paper.Name}"));
                Assert.All(page.Marks, mark => Assert.True(page.Size.Box.Contains(mark.Box), $"a mark leaves {paper.Name}: {mark.Box}"));
                var overlaps = labels.SelectMany((a, i) => labels.Skip(i + 1).Where(b => a.Box.Overlaps(b.Box)).Select(b => $"'{a.Text}' and '{b.Text}'"));
                Assert.Empty(overlaps);
            }
        }
    }

    [Fact]
    public void The_sheet_says_what_the_bench_needs()
    {
        var made = Of(4.0);
        var piece = made.Model.Piece;
        var said = made.Draw(PaperSize.A4).Document.Pages.SelectMany(page => page.Marks).OfType<Label>().Select(label => label.Text).ToList();
        var all = string.Join(' ', said);
        string Mm(double value) => value.ToString("0.00", CultureInfo.InvariantCulture);
        foreach (var text in (string[])
        [
            "FRONT", "TOP", "LEFT SIDE", "SECTION A-A", "SECTION B-B", "SECTION C-C, CLOSED", "LINE, LAID FLAT", "LINE, CLOSED ROUND",
            "first angle", "2026-03-31", $"{piece.Design.Brief.Alloy.Name}, 750 \u2030", "Stones and seats", "Tolerances", "Finish, face by face", "Cautions",
            $"\u00d8{Mm(piece.Link.StoneMm)}", $"{Mm(piece.Link.GirdleHeightMm)} girdle", $"{Mm(piece.Hinge.CuletMm)} culet", $"seat {Mm(piece.Link.SeatMm)} deep",
            $"bar \u00d8{Mm(piece.Hinge.BarMm)}", $"hole \u00d8{Mm(piece.Hinge.HoleMm)}", $"{Mm(piece.Clasp.LengthMm)} axis to axis", $"press {Mm(piece.Clasp.PressMm)} to free",
            $"{Mm(piece.Layout.LaidFlatMm)} laid flat", piece.Layout.PitchMm.ToString("0.000", CultureInfo.InvariantCulture) + " pitch",
        ])
        {
            Assert.Contains(text, all, StringComparison.Ordinal);
        }

        // Every caution, word for word, however it is broken into lines.
        Assert.All(made.Report.Cautions, caution => Assert.Contains(caution, all, StringComparison.Ordinal));
    }

    [Fact]
    public void Letter_is_drawn_in_third_angle_and_A4_in_first()
    {
        // Standard: ISO 5456-2: in first angle the view from above stands below the front view, in third above it.
        double HeightOf(PaperSize paper, string name) => Of(4.0).Draw(paper).Document.Pages[0].Marks.OfType<Label>().Single(label => label.Text == name).At.Y;
        Assert.True(HeightOf(PaperSize.A4, "TOP") > HeightOf(PaperSize.A4, "FRONT"));
        Assert.True(HeightOf(PaperSize.Letter, "TOP") < HeightOf(PaperSize.Letter, "FRONT"));

        // The clasp's page has the same sign in its title block, and stands as it says.
        double ClaspHeightOf(PaperSize paper, string name) => Of(4.0).Draw(paper).Document.Pages.SelectMany(page => page.Marks).OfType<Label>().Single(label => label.Text == name).At.Y;
        Assert.True(ClaspHeightOf(PaperSize.A4, "FROM ABOVE") > ClaspHeightOf(PaperSize.A4, "SECTION C-C, CLOSED"));
        Assert.True(ClaspHeightOf(PaperSize.Letter, "FROM ABOVE") < ClaspHeightOf(PaperSize.Letter, "SECTION C-C, CLOSED"));
    }

    [Fact]
    public void The_outlines_lie_as_the_sheet_does_and_say_how()
    {
        // Standard: ISO 5456-2: in first angle the view from above lies below the front view and the left side at its right; in third the other way round.
        foreach (var (paper, up, said) in new[] { (PaperSize.A4, -1, "FIRST ANGLE"), (PaperSize.Letter, 1, "THIRD ANGLE") })
        {
            var sheet = Of(4.0).Draw(paper);
            FlatPoint Middle(string name)
            {
                var points = sheet.Outlines.Single(plan => plan.Name == name).Lines.SelectMany(line => line.Points).ToList();
                return new FlatPoint((points.Min(p => p.X) + points.Max(p => p.X)) / 2, (points.Min(p => p.Y) + points.Max(p => p.Y)) / 2);
            }

            Assert.Equal(up, Math.Sign(Middle("TOP").Y - Middle("FRONT").Y));
            Assert.Equal(-up, Math.Sign(Middle("SIDE").X - Middle("FRONT").X));
            var dxf = System.Text.Encoding.ASCII.GetString(Files(Of(4.0), paper)["outlines.dxf"]);
            Assert.Contains($"TEXT\r\n8\r\nNOTES\r\n", dxf, StringComparison.Ordinal);
            Assert.Contains($"\r\n{said} PROJECTION, MM, SCALE 1:1, AS SET\r\n", dxf, StringComparison.Ordinal);
        }
    }

    [Fact]
    public void What_is_multiplied_on_the_sheet_gives_what_stands_there()
    {
        // 48 x 3.420 is 164.16; the line is 164.14 long.
        Assert.Equal("3.4196", Figures.Factor(3.419587, 48));
        Assert.Equal("2.400", Figures.Factor(2.4, 63));
        foreach (var diameter in (double[])[1.5, 3.0, 4.0])
        {
            var made = Of(diameter);
            var texts = made.Draw(PaperSize.A4).Document.Pages.SelectMany(page => page.Marks).OfType<Label>().Select(label => label.Text).ToList();
            var figures = texts.Single(text => text.Contains(" links \u00d7 ", StringComparison.Ordinal)).Split(' ').Where(word => char.IsDigit(word[0])).Select(word => decimal.Parse(word, CultureInfo.InvariantCulture)).ToList();
            Assert.Equal(figures[2], Math.Round(figures[0] * figures[1], 2, MidpointRounding.AwayFromZero));
        }
    }

    [Fact]
    public void The_sheet_names_the_stones_that_the_order_names_and_the_bend_that_was_measured()
    {
        var made = Of(4.0);
        var felt = made.Report with { Findings = [.. made.Report.Findings, new Finding("flex-outward", Verdict.Caution, "stop on stop", 7.951, 8, "deg", "test", "assumed", "a wider gap"), new Finding("opening", Verdict.Caution, "opening", 40.393432, 55, "%", "test", "assumed", "")] };
        var texts = made.Draw(PaperSize.A4, felt).Document.Pages.SelectMany(page => page.Marks).OfType<Label>().Select(label => label.Text).ToList();
        var all = string.Join(' ', texts);
        Assert.Equal(3, texts.Count(text => text.Contains("8.0\u00b0", StringComparison.Ordinal) && !text.Contains("limit", StringComparison.Ordinal)));
        Assert.Contains("Caution, flex outward: stop on stop: 7.95\u00b0, limit 8\u00b0", all, StringComparison.Ordinal);
        Assert.Contains("40.4 %, limit 55 %", all, StringComparison.Ordinal);

        // A joint that met nothing was turned by 75 degrees, and bends further.
        var free = felt with { Findings = [.. felt.Findings, new Finding("flex-inward", Verdict.Pass, "free", 75, 25, "deg", "test", "assumed", "")] };
        Assert.Contains(made.Draw(PaperSize.A4, free).Document.Pages.SelectMany(page => page.Marks).OfType<Label>(), label => label.Text == "over 75\u00b0");
        var order = made.Report.StoneOrder!;
        Assert.Contains(order.Words[0].Split(", ")[1].Replace(" mm", "", StringComparison.Ordinal), all, StringComparison.Ordinal);
        Assert.Contains($"{Linewright.Sheets.Figures.Mm(made.Model.MeshOf(Linewright.Parts.PartRole.Link).Mesh.Bounds.Size.Y)}", texts);
    }

    [Theory]
    [InlineData(1.5)]
    [InlineData(2.0)]
    [InlineData(4.0)]
    [InlineData(8.0)]
    public void No_leader_runs_through_the_letter_of_a_section(double diameter)
    {
        foreach (var page in Papers.SelectMany(paper => Of(diameter).Draw(paper).Document.Pages))
        {
            var letters = page.Marks.OfType<Label>().Where(label => label.Text.Length == 1).ToList();
            var leaders = page.Marks.OfType<Stroke>().Where(stroke => stroke is { Points.Length: 3, IsClosed: false, Pen.WidthMm: 0.18 }).ToList();
            Assert.DoesNotContain(letters, letter => leaders.Exists(leader => Enumerable.Range(0, 200).Any(i => Holds(letter.Box, On(leader, i / 200.0)))));
        }

        static PaperPoint On(Stroke leader, double share) => share < 0.5
            ? leader.Points[0] + (leader.Points[1] - leader.Points[0]) * (2 * share)
            : leader.Points[1] + (leader.Points[2] - leader.Points[1]) * (2 * share - 1);
        static bool Holds(PaperBox box, PaperPoint p) => p.X > box.Left && p.X < box.Right && p.Y > box.Top && p.Y < box.Bottom;
    }

    [Theory]
    [InlineData(4.0)]
    [InlineData(8.0)]
    public void Sections_are_drawn_as_large_as_the_link_and_the_clasp_so_that_its_strip_is_seen(double diameter)
    {
        foreach (var paper in Papers)
        {
            var pages = Of(diameter).Draw(paper).Document.Pages.Select(page => page.Marks.OfType<Label>().Select(label => label.Text).ToList()).ToList();
            double ScaleOf(string view) => double.Parse(pages.Single(page => page.Contains(view)).Single(text => text.EndsWith(":1; mm", StringComparison.Ordinal)).Split(':')[0], CultureInfo.InvariantCulture);
            Assert.All(["SECTION A-A", "SECTION B-B", "JOINT, SECTION A-A, TAUT"], view => Assert.Equal(ScaleOf("FRONT"), ScaleOf(view)));
            Assert.InRange(ScaleOf("SECTION C-C, CLOSED"), 5, 50);
        }
    }

    [Fact]
    public void Words_run_on_to_a_further_sheet_only_where_they_must()
    {
        // Two thirds of a column are left; the next table is a column high and would leave them white.
        static Table Rows(int count) => new([new("", 60)], [.. Enumerable.Range(0, count).Select(i => (System.Collections.Immutable.ImmutableArray<string>)["row"])], new TextStyle(1.8)) { HasHeading = false, PaddingMm = 0.7 };
        var field = new PaperBox(0, 0, 240, 160);
        var row = Rows(1).HeightMm;
        var column = (int)((160 - 5.9) / row);
        var sections = new (string, Table)[] { ("one", Rows(column)), ("two", Rows((int)(0.84 * column))), ("three", Rows(column)), ("four", Rows(1)) };
        Assert.Single(WordFlow.Set(sections[..3], field, PaperBox.Empty));
        Assert.Single(WordFlow.Set([sections[0], sections[1], ("three", Rows((int)(0.97 * column))), sections[3]], field, PaperBox.Empty));
    }

    [Theory]
    [InlineData(2.0)]
    [InlineData(4.0)]
    public void A_leader_to_the_stone_ends_on_its_girdle_where_no_claw_covers_it(double diameter)
    {
        // Every line of the stone that is seen from above is drawn fine; the arrow's point lies on one of them.
        var page = Of(diameter).Draw(PaperSize.A4).Document.Pages[0];
        var text = page.Marks.OfType<Label>().Single(label => label.Text.StartsWith("stone ", StringComparison.Ordinal));
        var leader = page.Marks.OfType<Stroke>().Where(stroke => stroke.Points.Length == 3).MinBy(stroke => (stroke.Points[2] - text.At).Length)!;
        var facets = page.Marks.OfType<Stroke>().Where(stroke => stroke.Pen.WidthMm == 0.13).ToList();
        Assert.True(facets.SelectMany(Steps).Min(p => (p - leader.Points[0]).Length) < 0.3, $"{leader.Points[0]}");

        IEnumerable<PaperPoint> Steps(Stroke stroke) => Enumerable.Range(1, stroke.Points.Length - 1)
            .SelectMany(i => Enumerable.Range(0, 50).Select(k => stroke.Points[i - 1] + (stroke.Points[i] - stroke.Points[i - 1]) * (k / 50.0)));
    }

    [Theory]
    [InlineData("The extraordinarily long and winding name of a line that the client chose alone.")]
    [InlineData("Straußenfeder für Ärzte – Ωμέγα Ελλάδα über Köln, sechzig Zeichen und mehr, siebzig")]
    public void A_long_name_stands_in_the_title_block_whole(string name)
    {
        var frame = new SheetFrame(PaperSize.A4.Landscape, Projection.FirstAngle, name, "metal", "stones", null);
        var labels = frame.Page("content", "1:1", 1, 1, []).Marks.OfType<Label>().ToList();
        Assert.Contains(name, string.Join(' ', labels.Select(label => label.Text)), StringComparison.Ordinal);
        Assert.All(labels, label => Assert.True(label.Style.CapitalMm >= 1.8 && frame.Inside.Contains(label.Box)));
        Assert.Empty(labels.SelectMany((a, i) => labels.Skip(i + 1).Where(b => a.Box.Overlaps(b.Box)).Select(b => $"'{a.Text}' and '{b.Text}'")));
    }

    [Fact]
    public void A_name_of_80_wide_letters_ends_in_dots_within_its_field()
    {
        var frame = new SheetFrame(PaperSize.A4.Landscape, Projection.FirstAngle, new string('W', 80), "metal", "stones", null);
        var name = frame.Page("content", "1:1", 1, 1, []).Marks.OfType<Label>().Where(label => label.Text.Contains('W', StringComparison.Ordinal)).ToList();
        Assert.Equal(2, name.Count);
        Assert.EndsWith("\u2026", name[1].Text, StringComparison.Ordinal);
        Assert.All(name, label => Assert.True(label.WidthMm <= 84 - 2.4));
    }

    [Fact]
    public void Lines_have_the_widths_of_one_group_and_no_grey()
    {
        // Standard: ISO 128-2: widths in steps of the root of 2 from 0.13 to 2 mm.
        double[] standard = [0.13, 0.18, 0.25, 0.35, 0.5, 0.7];
        var marks = Of(4.0).Draw(PaperSize.A4).Document.Pages.SelectMany(page => page.Marks).ToList();
        Assert.All(marks.OfType<Stroke>(), stroke => Assert.Contains(stroke.Pen.WidthMm, standard));
        Assert.All(marks.OfType<Area>(), area => Assert.True(area.Grey is 0 or 1));
        Assert.All(marks.OfType<Label>(), label => Assert.True(label.Style.CapitalMm >= 1.8));
    }

    [Fact]
    public void Two_drawings_have_the_same_bytes_whatever_the_culture()
    {
        var once = Files(Of(3.0));
        var before = CultureInfo.CurrentCulture;
        try
        {
            var comma = (CultureInfo)CultureInfo.InvariantCulture.Clone();
            (comma.NumberFormat.NumberDecimalSeparator, comma.NumberFormat.NegativeSign) = (",", "~");
            CultureInfo.CurrentCulture = comma;
            var again = Files(Of(3.0));
            Assert.Equal(once.Keys, again.Keys);
            Assert.All(once, file => Assert.Equal(file.Value, again[file.Key]));
        }
        finally
        {
            CultureInfo.CurrentCulture = before;
        }
    }

    [Fact]
    public void Outside_readers_take_the_pdf_the_svg_and_the_dxf()
    {
        var made = Of(4.0);
        var files = Files(made);
        var pages = files.Keys.Count(name => name.EndsWith(".svg", StringComparison.Ordinal));
        Assert.All(files.Where(file => file.Key.EndsWith(".svg", StringComparison.Ordinal)), file => new XmlDocument().Load(new MemoryStream(file.Value)));

        // Judges: qpdf --check, pdftotext of poppler, dxf-parser from npm.
        using var pdf = new ScratchFile("sheet.pdf", stream => stream.Write(files["sheet.pdf"]));
        OutsideTools.CheckPdf(pdf.Path);
        var text = OutsideTools.PdfText(pdf.Path);
        Assert.Equal(pages, text.Count(letter => letter == '\f'));
        Assert.Contains(FormattableString.Invariant($"{pages} of {pages}"), text, StringComparison.Ordinal);
        Assert.Contains("SECTION B-B", text, StringComparison.Ordinal);

        using var dxf = new ScratchFile("outlines.dxf", stream => stream.Write(files["outlines.dxf"]));
        var found = OutsideTools.ReadDxf(dxf.Path);
        Assert.Equal("AC1009", found.Version);
        Assert.Contains("DASHED", found.LineTypes);

        // True scale: the front view is as long as the link, the view from above as wide, both within the lift.
        var size = made.Model.MeshOf(Linewright.Parts.PartRole.Link).Mesh.Bounds.Size;
        var front = found.Layers.Single(layer => layer.Name == "FRONT_METAL");
        Assert.Equal(size.X, front.Right - front.Left, 0.05);
        Assert.Equal(size.Z, front.High - front.Low, 0.05);
        var top = found.Layers.Single(layer => layer.Name == "TOP_METAL");
        Assert.Equal(size.Y, top.High - top.Low, 0.05);

        Assert.Equal(["FRONT", "LEFT SIDE", "TOP", "SECTION A-A", "SECTION B-B", "FIRST ANGLE PROJECTION, MM, SCALE 1:1, AS SET"], found.Layers.Single(layer => layer.Name == "NOTES").Texts);

        // And as long as the lines that we drew.
        var drawn = made.Draw(PaperSize.A4).Outlines.Single(plan => plan.Name == "SECTION_A").Lines.Where(line => line.Tag != SheetTagOfStone);
        Assert.Equal(drawn.Sum(line => line.Length), found.Layers.Single(layer => layer.Name == "SECTION_A_METAL").Length, 1e-3);
    }

    [Fact]
    public void A_layer_of_a_dxf_has_a_name_that_release_12_allows()
        => Assert.Throws<ArgumentException>(() => new DxfLayer("front view", false, []));

    [Theory]
    [InlineData("\u00d83.00")]
    [InlineData("50 %")]
    [InlineData("")]
    public void Lettering_of_a_dxf_is_what_release_12_reads(string text)
        => Assert.Throws<ArgumentException>(() => new DxfText(new FlatPoint(0, 0), 1, text));

    private static int SheetTagOfStone => Of(4.0).Draw(PaperSize.A4).Outlines[0].StoneTag;

    private static Made Of(double diameter) => Known.GetOrAdd(diameter, key => new Lazy<Made>(() => new Made(key))).Value;

    private static SortedDictionary<string, byte[]> Files(Made made) => Files(made, PaperSize.A4);

    private static SortedDictionary<string, byte[]> Files(Made made, PaperSize paper)
    {
        var streams = new SortedDictionary<string, MemoryStream>(StringComparer.Ordinal);
        SheetFiles.Write(made.Model, made.Report, paper, null, name => streams[name] = new MemoryStream(), CancellationToken.None);
        return new SortedDictionary<string, byte[]>(streams.ToDictionary(file => file.Key, file => file.Value.ToArray(), StringComparer.Ordinal), StringComparer.Ordinal);
    }

    /// <summary>A line, coarsely meshed once, and its sheets.</summary>
    private sealed class Made
    {
        // Coarser than a caster's file: sheets are drawn from real parts, but seconds count.
        private static readonly MeshSettings Settings = new(0.07, 0.02, true);

        private readonly ConcurrentDictionary<string, TechnicalSheet> sheets = new(StringComparer.Ordinal);

        public Made(double diameter)
        {
            var piece = CheckedPieces.Piece(diameter, "gold-750-yellow");
            Model = PieceModel.Of(piece, [.. piece.Parts.AsParallel().AsOrdered().Select(part => Mesher.Run(part.AsSet, Settings, threads: 1))]);
            var findings = new[] { new Finding("smallest-wall", Verdict.Caution, "base rail", 0.61, 0.7, "mm", "test", "assumed", "a thicker rail") };
            var weights = piece.Parts.Select(part => new PartReport(part.Name, "", part.Count, part.IsCast, 1, 1, 1, 0, 1, 1, 0.31, 0.4)).ToList();
            Report = Reports.WithFindings(Reports.Of(piece.Design), findings, Cautions.For(piece.Design.Brief)) with { Parts = weights, Weights = new WeightsReport(14.2, 18.3, 29.3, []) };
        }

        public PieceModel Model { get; }

        public Report Report { get; }

        public TechnicalSheet Draw(PaperSize paper) => sheets.GetOrAdd(paper.Name, _ => Draw(paper, Report));

        public TechnicalSheet Draw(PaperSize paper, Report report) => SheetDrawer.Draw(new SheetTask(
            Model,
            report,
            [.. Model.Piece.Parts.Select((part, i) => CreasedNormals.Of(Model.AsSet[i].Mesh, part.AsSet)).Select(surface => OutlineBody.Of(surface.Positions, surface.Normals, surface.Triangles))],
            paper,
            new DateOnly(2026, 3, 31)));
    }
}
