using System.Numerics;
using System.Runtime.InteropServices;

namespace Linewright.Tolerance;

/// <summary>The standard normal's quantile: how many deviations above the mean a share of all values lies below.</summary>
/// <remarks>
/// Source: Wichura (1988), Algorithm AS 241: The Percentage Points of the Normal Distribution, Applied Statistics 37, 477, routine PPND16;
/// coefficients from memory, held against <see cref="Checks.NormalLaw"/> by a test. Relative accuracy 1e-15. The middle of the curve is
/// products and one quotient, so that it goes in lanes and gives the same bits everywhere.
/// </remarks>
public static class InverseNormal
{
    private const double Middle = 0.425, MiddleSquared = 0.180625, FarFrom = 5;

    /// <summary>The quantile of one share.</summary>
    /// <param name="share">Above 0 and below 1.</param>
    public static double Of(double share)
    {
        if (!(share > 0 && share < 1))
        {
            throw new ArgumentOutOfRangeException(nameof(share), share, "share must lie above 0 and below 1");
        }

        var q = share - 0.5;
        return Math.Abs(q) <= Middle ? Central(q) : Tail(q, share);
    }

    /// <summary>Replaces every share by its quantile.</summary>
    internal static void Replace(Span<double> shares)
    {
        var lanes = MemoryMarshal.Cast<double, Vector<double>>(shares);
        Span<double> one = stackalloc double[Vector<double>.Count];
        foreach (ref var lane in lanes)
        {
            var q = lane - new Vector<double>(0.5);
            var quantile = Central(q);
            if (Vector.GreaterThanAny(Vector.Abs(q), new Vector<double>(Middle)))
            {
                quantile.CopyTo(one);
                for (var i = 0; i < one.Length; i++)
                {
                    one[i] = Math.Abs(q[i]) <= Middle ? one[i] : Tail(q[i], lane[i]);
                }

                quantile = new Vector<double>(one);
            }

            lane = quantile;
        }

        for (var i = lanes.Length * Vector<double>.Count; i < shares.Length; i++)
        {
            shares[i] = Of(shares[i]);
        }
    }

    private static double Central(double q)
    {
        var r = MiddleSquared - q * q;
        return q * (((((((2.5090809287301226727e+3 * r + 3.3430575583588128105e+4) * r + 6.7265770927008700853e+4) * r + 4.5921953931549871457e+4) * r
            + 1.3731693765509461125e+4) * r + 1.9715909503065514427e+3) * r + 1.3314166789178437745e+2) * r + 3.3871328727963666080e0)
            / (((((((5.2264952788528545610e+3 * r + 2.8729085735721942674e+4) * r + 3.9307895800092710610e+4) * r + 2.1213794301586595867e+4) * r
            + 5.3941960214247511077e+3) * r + 6.8718700749205790830e+2) * r + 4.2313330701600911252e+1) * r + 1);
    }

    private static Vector<double> Central(Vector<double> q)
    {
        static Vector<double> C(double value) => new(value);
        var r = C(MiddleSquared) - q * q;
        return q * (((((((C(2.5090809287301226727e+3) * r + C(3.3430575583588128105e+4)) * r + C(6.7265770927008700853e+4)) * r + C(4.5921953931549871457e+4)) * r
            + C(1.3731693765509461125e+4)) * r + C(1.9715909503065514427e+3)) * r + C(1.3314166789178437745e+2)) * r + C(3.3871328727963666080e0))
            / (((((((C(5.2264952788528545610e+3) * r + C(2.8729085735721942674e+4)) * r + C(3.9307895800092710610e+4)) * r + C(2.1213794301586595867e+4)) * r
            + C(5.3941960214247511077e+3)) * r + C(6.8718700749205790830e+2)) * r + C(4.2313330701600911252e+1)) * r + C(1));
    }

    private static double Tail(double q, double share)
    {
        var r = Math.Sqrt(-Math.Log(q < 0 ? share : 1 - share));
        double quantile;
        if (r <= FarFrom)
        {
            r -= 1.6;
            quantile = (((((((7.74545014278341407640e-4 * r + 2.27238449892691845833e-2) * r + 2.41780725177450611770e-1) * r + 1.27045825245236838258e0) * r
                + 3.64784832476320460504e0) * r + 5.76949722146069140550e0) * r + 4.63033784615654529590e0) * r + 1.42343711074968357734e0)
                / (((((((1.05075007164441684324e-9 * r + 5.47593808499534494600e-4) * r + 1.51986665636164571966e-2) * r + 1.48103976427480074590e-1) * r
                + 6.89767334985100004550e-1) * r + 1.67638483018380384940e0) * r + 2.05319162663775882187e0) * r + 1);
        }
        else
        {
            r -= FarFrom;
            quantile = (((((((2.01033439929228813265e-7 * r + 2.71155556874348757815e-5) * r + 1.24266094738807843860e-3) * r + 2.65321895265761230930e-2) * r
                + 2.96560571828504891230e-1) * r + 1.78482653991729133580e0) * r + 5.46378491116411436990e0) * r + 6.65790464350110377720e0)
                / (((((((2.04426310338993978564e-15 * r + 1.42151175831644588870e-7) * r + 1.84631831751005468180e-5) * r + 7.86869131145613259100e-4) * r
                + 1.48753612908506148525e-2) * r + 1.36929880922735805310e-1) * r + 5.99832206555887937690e-1) * r + 1);
        }

        return q < 0 ? -quantile : quantile;
    }
}
