using Linewright.Solids.Space;

namespace Linewright.Checks;

/// <summary>How likely it is that every joint of a line runs free, given what a process scatters.</summary>
/// <remarks>
/// A joint's clearance is taken as normal about its nominal value. What scatters joint by joint is independent; what all castings of
/// a tree share moves every joint alike, and is given as a spread of its own. All lengths mm.
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

    /// <summary>Probability that all joints run free: (1 - q) to the power of their number, averaged over what they share.</summary>
    /// <param name="joints">Number of joints.</param>
    /// <param name="clearanceMm">Nominal clearance.</param>
    /// <param name="sigmaMm">Standard deviation of one joint on its own.</param>
    /// <param name="leastMm">Clearance below which a joint binds.</param>
    /// <param name="sharedSigmaMm">Standard deviation of what moves all joints alike.</param>
    /// <remarks>
    /// The integral over the shared part is summed by the trapezoidal rule, whose error falls exponentially for a smooth integrand that dies
    /// out at both ends. Source: Trefethen and Weideman (2014), SIAM Review 56, The Exponentially Convergent Trapezoidal Rule.
    /// </remarks>
    public static double AllRunFree(int joints, double clearanceMm, double sigmaMm, double leastMm = 0, double sharedSigmaMm = 0)
    {
        ArgumentOutOfRangeException.ThrowIfNegative(joints);
        if (Guard.InRange(sharedSigmaMm, 0, 10) == 0 || joints == 0)
        {
            return Math.Pow(1 - OneBinds(clearanceMm, sigmaMm, leastMm), joints);
        }

        if (sigmaMm == 0)
        {
            return 1 - OneBinds(clearanceMm, sharedSigmaMm, leastMm);
        }

        // Steps fine enough for the narrower of the two bells, out to where the normal law has nothing left.
        const double end = 8.5;
        var step = Math.Clamp(0.25 * sigmaMm / sharedSigmaMm, 1e-3, 0.1);
        double sum = 0, weights = 0;
        for (var z = -end; z <= end; z += step)
        {
            var weight = Math.Exp(-z * z / 2);
            sum += weight * Math.Pow(1 - OneBinds(clearanceMm + sharedSigmaMm * z, sigmaMm, leastMm), joints);
            weights += weight;
        }

        return sum / weights;
    }

    /// <summary>Smallest nominal clearance with which all joints run free at least so probably, mm.</summary>
    /// <param name="joints">Number of joints, 1 or more.</param>
    /// <param name="sigmaMm">Standard deviation of a clearance.</param>
    /// <param name="probability">Wanted probability, above 0 and below 1.</param>
    /// <param name="leastMm">Clearance below which a joint binds.</param>
    /// <param name="sharedSigmaMm">Standard deviation of what moves all joints alike.</param>
    public static double ClearanceForMm(int joints, double sigmaMm, double probability, double leastMm = 0, double sharedSigmaMm = 0)
    {
        ArgumentOutOfRangeException.ThrowIfLessThan(joints, 1);
        Guard.InRange(probability, double.Epsilon, 1 - 1e-12);
        Guard.InRange(sigmaMm, 0, 10);

        // The probability only rises with the clearance: halve between bounds that hold any answer a double can tell.
        var reach = 10 * (sigmaMm + Guard.InRange(sharedSigmaMm, 0, 10));
        double low = leastMm - reach, high = leastMm + reach;
        for (var round = 0; round < 60; round++)
        {
            var middle = (low + high) / 2;
            if (AllRunFree(joints, middle, sigmaMm, leastMm, sharedSigmaMm) < probability)
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
