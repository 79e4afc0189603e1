namespace Linewright.Tolerance;

/// <summary>Random numbers by counting: the same key and the same counter give the same four words, whoever asks and in whatever order.</summary>
/// <remarks>
/// Philox 4x32 with ten rounds. Source: Salmon, Moraes, Dror and Shaw (2011), Parallel Random Numbers: As Easy as 1, 2, 3, SC11. No state, so
/// a piece's fate does not depend on how many threads drew the others. Not for secrets.
/// </remarks>
public static class Philox
{
    // The paper's multipliers and the steps of its key: the golden ratio and the root of 3 less 1.
    private const uint FirstFactor = 0xD2511F53, SecondFactor = 0xCD9E8D57, FirstStep = 0x9E3779B9, SecondStep = 0xBB67AE85;

    private const int Rounds = 10;

    /// <summary>Four words of 32 bits.</summary>
    public static (uint A, uint B, uint C, uint D) Words(uint a, uint b, uint c, uint d, ulong key)
    {
        var (first, second) = ((uint)key, (uint)(key >> 32));
        for (var round = 0; round < Rounds; round++)
        {
            ulong left = (ulong)FirstFactor * a, right = (ulong)SecondFactor * c;
            (a, b, c, d) = ((uint)(right >> 32) ^ b ^ first, (uint)right, (uint)(left >> 32) ^ d ^ second, (uint)left);
            unchecked
            {
                first += FirstStep;
                second += SecondStep;
            }
        }

        return (a, b, c, d);
    }
}
