using Linewright.Solids.Space;

namespace Linewright.Checks;

/// <summary>How likely it is that every joint of a line runs free, given what a process scatters.</summary>
/// <remarks>
/// A joint's clearance is taken as normal about its nominal value, joints as independent. A drift that all castings
/// of a tree share is not seen: take it off the mean first. All lengths mm.
/// </remarks>
public static class RunningFit
{
    /// <summary>Scatter of a clearance between two features that scatter on their own: root of the sum of squares, mm.</summary>
    public static double SigmaMm(double holeSigmaMm, double barSigmaMm)
        => Math.Sqrt(Math.Pow(Guard.InRange(holeSigmaMm, 0, 10), 2) + Math.Pow(Guard.InRange(barSigmaMm, 0, 10), 2));

    /// <summary>Probability that one joint has less than the least clearance.</summary>
    /// <param name="clearanceMm">Nominal clearance.</param>
    /// <param name="sigmaMm">Its standard deviation; 0 where the process is exact.</param>
    /// <param name="leastMm">Clearance below which a joint binds; 0 is touching.</param>
    public static double OneBinds(double clearanceMm, double sigmaMm, double leastMm = 0)
    {
        var room = Guard.Finite(clearanceMm) - Guard.Finite(leastMm);
        return Guard.InRange(sigmaMm, 0, 10) > 0 ? NormalLaw.Above(room / sigmaMm) : room >= 0 ? 0 : 1;
    }

    /// <summary>Probability that all joints run free: (1 - q) to the power of their number.</summary>
    public static double AllRunFree(int joints, double clearanceMm, double sigmaMm, double leastMm = 0)
    {
        ArgumentOutOfRangeException.ThrowIfNegative(joints);
        return Math.Pow(1 - OneBinds(clearanceMm, sigmaMm, leastMm), joints);
    }

    /// <summary>Smallest nominal clearance with which all joints run free at least so probably, mm.</summary>
    /// <param name="joints">Number of joints, 1 or more.</param>
    /// <param name="sigmaMm">Standard deviation of a clearance.</param>
    /// <param name="probability">Wanted probability, above 0 and below 1.</param>
    /// <param name="leastMm">Clearance below which a joint binds.</param>
    public static double ClearanceForMm(int joints, double sigmaMm, double probability, double leastMm = 0)
    {
        ArgumentOutOfRangeException.ThrowIfLessThan(joints, 1);
        Guard.InRange(probability, double.Epsilon, 1 - 1e-12);
        Guard.InRange(sigmaMm, 0, 10);

        // The probability only rises with the clearance: halve between bounds that hold any answer a double can tell.
        double low = leastMm - 10 * sigmaMm, high = leastMm + 10 * sigmaMm;
        for (var round = 0; round < 60; round++)
        {
            var middle = (low + high) / 2;
            if (AllRunFree(joints, middle, sigmaMm, leastMm) < probability)
            {
                low = middle;
            }
            else
            {
                high = middle;
            }
        }

        return high;
    }
}
