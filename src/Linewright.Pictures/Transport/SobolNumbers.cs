namespace Linewright.Pictures.Transport;

/// <summary>Direction numbers of Sobol's sequence, 16 dimensions of 32 bits, each with its bits reversed.</summary>
/// <remarks>Source: Joe and Kuo (2008), SIAM J. Sci. Comput. 30, 2635, table new-joe-kuo-6, dimensions 2 to 16. From memory; a test counts how evenly they fall.</remarks>
internal static class SobolNumbers
{
    // Degree of the primitive polynomial, its inner coefficients as bits, the first direction numbers.
    private static readonly (int Degree, uint Inner, uint[] First)[] Rows =
    [
        (1, 0, [1]), (2, 1, [1, 3]), (3, 1, [1, 3, 1]), (3, 2, [1, 1, 1]), (4, 1, [1, 1, 3, 3]), (4, 4, [1, 3, 5, 13]),
        (5, 2, [1, 1, 5, 5, 17]), (5, 4, [1, 1, 5, 5, 5]), (5, 7, [1, 1, 7, 11, 19]), (5, 11, [1, 1, 5, 1, 1]),
        (5, 13, [1, 1, 1, 3, 11]), (5, 14, [1, 3, 5, 5, 31]), (6, 1, [1, 3, 3, 9, 7, 49]), (6, 13, [1, 1, 1, 15, 21, 21]),
        (6, 16, [1, 3, 1, 13, 27, 49]),
    ];

    public static uint[] All()
    {
        var numbers = new uint[SampleStream.Even * 32];
        for (var bit = 0; bit < 32; bit++)
        {
            numbers[bit] = 1u << bit;
        }

        for (var dimension = 1; dimension < SampleStream.Even; dimension++)
        {
            var (degree, inner, first) = Rows[dimension - 1];
            var v = new uint[32];
            for (var i = 0; i < 32; i++)
            {
                if (i < degree)
                {
                    v[i] = first[i] << (31 - i);
                    continue;
                }

                v[i] = v[i - degree] ^ (v[i - degree] >> degree);
                for (var k = 1; k < degree; k++)
                {
                    if (((inner >> (degree - 1 - k)) & 1) != 0)
                    {
                        v[i] ^= v[i - k];
                    }
                }
            }

            for (var i = 0; i < 32; i++)
            {
                numbers[dimension * 32 + i] = SampleStream.Reverse(v[i]);
            }
        }

        return numbers;
    }
}
