using Linewright.Pictures.Images;

namespace Linewright.Pictures.Gpu;

/// <summary>In which order a card's lanes take the pixels: a group of 32 looks at 8 by 4 of them, so that its rays go much the same way.</summary>
internal static class CardOrder
{
    private const int BlockWidth = 8;
    private const int BlockHeight = 4;

    /// <summary>Lists the pixels that want more than <paramref name="done"/> samples.</summary>
    /// <returns>How many there are.</returns>
    public static int Fill(int[] order, PictureSize size, ushort[] wanted, int done)
    {
        var count = 0;
        for (var top = 0; top < size.Height; top += BlockHeight)
        {
            for (var left = 0; left < size.Width; left += BlockWidth)
            {
                for (var y = top; y < Math.Min(top + BlockHeight, size.Height); y++)
                {
                    for (var x = left; x < Math.Min(left + BlockWidth, size.Width); x++)
                    {
                        var at = y * size.Width + x;
                        if (wanted[at] > done)
                        {
                            order[count++] = at;
                        }
                    }
                }
            }
        }

        return count;
    }
}
