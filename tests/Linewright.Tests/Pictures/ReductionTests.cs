using Linewright.Pictures.Images;

namespace Linewright.Tests.Pictures;

/// <summary>A picture made smaller shows the same light.</summary>
public class ReductionTests
{
    [Fact]
    public void A_picture_that_is_small_enough_stays_as_it_is()
    {
        var picture = Ramp(30, 20);
        Assert.Same(picture, Reduction.ToAtMost(picture, 600));
    }

    [Theory]
    [InlineData(30, 20, 599, 15, 10)]
    [InlineData(31, 20, 160, 16, 10)]
    [InlineData(7, 5, 1, 1, 1)]
    public void Each_pixel_is_the_mean_of_a_square_or_of_what_is_left_of_one(int width, int height, int most, int smallWidth, int smallHeight)
    {
        var small = Reduction.ToAtMost(Ramp(width, height), most);
        Assert.Equal((smallWidth, smallHeight), (small.Size.Width, small.Size.Height));
        var by = (width + smallWidth - 1) / smallWidth;
        for (var y = 0; y < smallHeight; y++)
        {
            for (var x = 0; x < smallWidth; x++)
            {
                // Light that grows evenly has its mean in the middle of what is averaged.
                double acrossEnd = Math.Min((x + 1) * by, width) - 1, downEnd = Math.Min((y + 1) * by, height) - 1;
                var at = y * smallWidth + x;
                Assert.Equal((x * by + acrossEnd) / 2, small.Colour[3 * at], 1e-3);
                Assert.Equal((y * by + downEnd) / 2, small.Colour[3 * at + 1], 1e-3);
                Assert.Equal(0.25, small.Colour[3 * at + 2], 1e-5);
                Assert.Equal(0.5, small.Alpha[at], 1e-5);
            }
        }
    }

    private static Picture Ramp(int width, int height)
    {
        var size = new PictureSize(width, height);
        var colour = new float[3 * size.Count];
        for (var i = 0; i < size.Count; i++)
        {
            (colour[3 * i], colour[3 * i + 1], colour[3 * i + 2]) = (i % width, i / width, 0.25f);
        }

        return new Picture(size, colour, [.. Enumerable.Repeat(0.5f, size.Count)], new NoiseEstimate(16, 1, [0], 0, 1), null);
    }
}
