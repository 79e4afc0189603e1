namespace Linewright.Pictures.Denoising;

/// <summary>Some rows of a picture and what lies round them, one plane a quantity, for the vector unit.</summary>
internal sealed class FilterBand
{
    /// <summary>Pixels on every side that are read but not written: the search and the patch.</summary>
    public const int Margin = JointFilter.Radius + 1;

    /// <summary>Key of what lies outside the picture: it matches nothing.</summary>
    public const int Outside = int.MinValue;

    /// <summary>Square of the mean normal's length under which a pixel counts as mixed. Calculated: two facets that meet at 16 degrees, half and half.</summary>
    private const float Mixed = 0.98f;

    public FilterBand(int width, int rows)
    {
        // Room for a whole vector past the last pixel.
        Stride = (width + 2 * Margin + 15) / 8 * 8;
        Rows = rows + 2 * Margin;
        First = Planes(3);
        Second = Planes(3);
        Normal = Planes(3);
        Variance = new float[Stride * Rows];
        Key = new int[Stride * Rows];
    }

    public int Stride { get; }

    public int Rows { get; }

    public float[][] First { get; }

    public float[][] Second { get; }

    public float[][] Normal { get; }

    public float[] Variance { get; }

    public int[] Key { get; }

    /// <summary>Fills all rows from a picture, the first at <paramref name="top"/> less the margin.</summary>
    public void Fill(int top, int width, int height, Func<int, int, FilterPixel> pixel)
    {
        Array.Fill(Key, Outside);
        for (var row = 0; row < Rows; row++)
        {
            var y = top - Margin + row;
            for (var column = 0; column < Stride; column++)
            {
                var x = column - Margin;
                var at = row * Stride + column;
                if (x < 0 || x >= width || y < 0 || y >= height)
                {
                    First[0][at] = First[1][at] = First[2][at] = Second[0][at] = Second[1][at] = Second[2][at] = 0;
                    Variance[at] = 0;
                    continue;
                }

                Put(at, pixel(x, y));
            }
        }
    }

    private void Put(int at, in FilterPixel p)
    {
        float r = Over(p.Albedo.Red), g = Over(p.Albedo.Green), b = Over(p.Albedo.Blue);
        (First[0][at], First[1][at], First[2][at]) = (p.First.Red * r, p.First.Green * g, p.First.Blue * b);
        (Second[0][at], Second[1][at], Second[2][at]) = (p.Second.Red * r, p.Second.Green * g, p.Second.Blue * b);
        var mean = (r + g + b) / 3;
        Variance[at] = p.Variance * mean * mean;
        (Normal[0][at], Normal[1][at], Normal[2][at]) = p.Normal;
        var (x, y, z) = p.Normal;
        var length = x * x + y * y + z * z;

        // Where surfaces meet within a pixel, only pixels with much the same mixture are its kin.
        Key[at] = length >= Mixed || p.Facet == 0
            ? p.Facet
            : -1 - (Step(x) + 16 * Step(y) + 256 * Step(z) + 4096 * (p.Facet & 0x3FFFF));
    }

    /// <summary>One over an albedo, held away from zero.</summary>
    public static float Over(float albedo) => 1 / MathF.Max(albedo, 0.02f);

    private static int Step(float v) => Math.Clamp((int)((v + 1) * 7.5f), 0, 15);

    private float[][] Planes(int count) => [.. Enumerable.Range(0, count).Select(_ => new float[Stride * Rows])];
}
