using System.Text;
using Linewright.Delivery;

namespace Linewright.Tests.Files;

/// <summary>What files are called after a piece's name.</summary>
public class FileStemTests
{
    [Theory]
    [InlineData("Harbour lights", "harbour-lights")]
    [InlineData("港口的灯火 \u2728 für Žofia", "港口的灯火-für-žofia")]
    [InlineData("../..\\ a:b?", "a-b")]
    [InlineData("\u2728\ud83d\ude00 ---", "piece")]
    [InlineData("\ud800", "piece")]
    public void A_name_gives_a_stem_that_every_disk_takes(string name, string stem) => Assert.Equal(stem, FileStem.Of(name));

    [Fact]
    public void The_longest_name_stays_under_what_a_disk_allows()
        => Assert.InRange(Encoding.UTF8.GetByteCount(FileStem.Of(string.Concat(Enumerable.Repeat("\ud840\udc00", 80)))), 100, 255 - "-quote-client.pdf".Length);
}
