using Linewright.Solids.Space;

namespace Linewright.Layout;

/// <summary>A closed ring of hinge points on a curve everywhere equally far outside a wrist form.</summary>
/// <param name="Form">Sized so that the chain closes.</param>
/// <param name="Hinges">From the clasp's eye end once round and back to it: links first, the clasp last.</param>
internal sealed record WristRing(WristForm Form, IReadOnlyList<Vec3> Hinges)
{
    // Positions along the curve are angles near 1; this is a few grains of a double.
    private const double AngleTolerance = 1e-15;

    /// <summary>Finds the size at which the chain closes.</summary>
    /// <param name="chain">The line.</param>
    /// <param name="shape">Ratio and exponent of the form.</param>
    /// <param name="offset">Hinge axes outside the form, mm.</param>
    /// <param name="smallest">A half breadth at which the curve is no longer than the chain, mm.</param>
    public static WristRing Close(HingeChain chain, WristForm shape, double offset, double smallest)
    {
        // Arcs are longer than chords: on a curve as long as the chain the last hinge overshoots.
        WristForm Sized(double halfBreadth) => shape with { HalfBreadthMm = halfBreadth };
        double Overshoot(double halfBreadth) => HalfRing(chain, Sized(halfBreadth), offset, out _);
        double low = smallest, high = smallest * 1.001;
        while (Overshoot(high) > 0)
        {
            (low, high) = (high, high + 2 * (high - smallest));
        }

        var form = Sized(Roots.Between(Overshoot, low, high, AngleTolerance * smallest));
        HalfRing(chain, form, offset, out var half);

        // The other half is its mirror image; with an even count the topmost hinge is its own.
        var hinges = new List<Vec3>(half);
        if (chain.Count % 2 == 0)
        {
            hinges[^1] = hinges[^1] with { X = 0 };
        }

        for (var i = half.Count - 1 - (1 - chain.Count % 2); i >= 0; i--)
        {
            hinges.Add(half[i] with { X = -half[i].X });
        }

        hinges.Add(half[0]);
        return new WristRing(form, hinges);
    }

    /// <summary>Steps from the clasp's eye end, up and over towards the top; returns how far past the middle it ends, mm.</summary>
    private static double HalfRing(HingeChain chain, WristForm form, double offset, out List<Vec3> hinges)
    {
        Vec3 On(double travelled) => OnCurve(form, offset, travelled);

        // The clasp lies across the bottom, half of it on either side. A clasp wider than the curve starts at its side.
        var widest = -On(Math.PI / 2).X;
        var at = chain.ClaspMm / 2 >= widest
            ? Math.PI / 2
            : Roots.Between(t => -On(t).X - chain.ClaspMm / 2, 0, Math.PI / 2, AngleTolerance);
        hinges = [On(at)];
        for (var i = 0; i < chain.Count / 2; i++)
        {
            var from = hinges[^1];
            double Beyond(double t) => (On(t) - from).Length - chain.PitchMm;
            double near = at, far = at + chain.PitchMm / from.Length;
            while (Beyond(far) < 0 && far < at + Math.PI)
            {
                (near, far) = (far, far + chain.PitchMm / from.Length);
            }

            at = Roots.Between(Beyond, near, far, AngleTolerance);
            hinges.Add(On(at));
        }

        // Beyond the top the way back down counts on: x alone would turn round on the far side.
        var target = chain.Count % 2 == 0 ? 0 : -chain.PitchMm / 2;
        return at < 1.5 * Math.PI ? hinges[^1].X - target : widest + at;
    }

    /// <summary>A point on the curve; travelled runs from 0 at the bottom over the -x side to pi at the top.</summary>
    private static Vec3 OnCurve(WristForm form, double offset, double travelled)
    {
        var angle = -Math.PI / 2 - travelled;
        return form.Point(angle) + form.Normal(angle) * offset;
    }
}
