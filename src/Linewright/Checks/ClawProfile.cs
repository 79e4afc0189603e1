using Linewright.Parts;
using Linewright.Solids.Shapes;
using Linewright.Solids.Space;

namespace Linewright.Checks;

/// <summary>One claw read off a link's solid in the upright plane through the stone's axis and the claw: mm, heights over the skin.</summary>
/// <param name="DiameterMm">Across the claw, square to that plane, at its thinnest between rail and girdle.</param>
/// <param name="StoneRadiusMm">From the axis to the stone's edge in that plane, at the girdle.</param>
/// <param name="HeelMm">Metal behind the bearing at the girdle.</param>
/// <param name="ReachMm">From the axis to the claw's innermost point over the girdle.</param>
/// <param name="TopMm">Highest point.</param>
internal sealed record ClawProfile(double DiameterMm, double StoneRadiusMm, double HeelMm, double ReachMm, double TopMm)
{
    // A surface is reached when this near; steps between heights and radii are finer than any limit's last digit.
    private const double NearMm = 1e-4, StepMm = 0.02;
    private const int MostSteps = 400;

    /// <summary>How far the claw lies over the crown, measured towards the axis.</summary>
    public double CoverMm => StoneRadiusMm - ReachMm;

    /// <summary>The share of the claw that is left behind the bearing.</summary>
    public double HeelShare => HeelMm / DiameterMm;

    /// <summary>Reads the claw at positive x and y; the others are its mirror images.</summary>
    /// <param name="metal">The link.</param>
    /// <param name="stone">The stone where it sits.</param>
    /// <param name="form">Tells where to look: azimuth and heights, no sizes.</param>
    public static ClawProfile Read(Solid metal, Solid stone, LinkForm form)
    {
        var along = new Vec3(Math.Cos(form.ClawAzimuth), Math.Sin(form.ClawAzimuth), 0);
        var across = new Vec3(-along.Y, along.X, 0);
        Vec3 At(double reach, double height) => along * reach + Vec3.UnitZ * height;
        double girdle = form.GirdleHeightMm, far = 2 * form.StoneMm;

        var edge = March(stone, At(far, girdle), -along, far) is { } way ? far - way : 0;
        var outside = far - (March(metal, At(far, girdle), -along, far) ?? far);
        var heel = outside - edge;

        // The claw is bare between the rail with its fillet and the girdle.
        var diameter = double.PositiveInfinity;
        var low = Math.Min(form.UpperTopMm + 0.5 * (girdle - form.UpperTopMm), girdle - 3 * StepMm);
        for (var height = low; height < girdle; height += StepMm)
        {
            diameter = Math.Min(diameter, Widest(metal, r => At(r, height), across, edge, far));
        }

        // From the axis outwards at every height over the girdle: what is met first is the claw.
        var (reach, top) = (double.PositiveInfinity, 0.0);
        for (var height = girdle + StepMm; height < form.TableHeightMm + form.StoneMm; height += StepMm)
        {
            if (March(metal, At(0, height), along, far) is not { } met)
            {
                break;
            }

            (reach, top) = (Math.Min(reach, met), height);
        }

        return new ClawProfile(diameter, edge, heel, reach, top);
    }

    private static double Widest(Solid metal, Func<double, Vec3> at, Vec3 across, double from, double far)
    {
        var widest = 0.0;
        for (var reach = from; reach < far; reach += StepMm)
        {
            if (metal.Distance(at(reach)) < -NearMm)
            {
                widest = Math.Max(widest, Through(metal, at(reach), across) + Through(metal, at(reach), -across));
            }
            else if (widest > 0)
            {
                break;
            }
        }

        return widest;
    }

    /// <summary>From inside to the surface, mm.</summary>
    private static double Through(Solid metal, Vec3 from, Vec3 direction)
    {
        var way = 0.0;
        for (var i = 0; i < MostSteps; i++)
        {
            var depth = -metal.Distance(from + direction * way);
            if (depth < NearMm)
            {
                break;
            }

            way += depth;
        }

        return way;
    }

    /// <summary>From outside to the surface, mm; null where nothing is met.</summary>
    public static double? March(Solid solid, Vec3 from, Vec3 direction, double most)
    {
        var way = 0.0;
        for (var i = 0; i < MostSteps && way < most; i++)
        {
            var distance = solid.Distance(from + direction * way);
            if (distance < NearMm)
            {
                return way;
            }

            way += distance;
        }

        return null;
    }
}
