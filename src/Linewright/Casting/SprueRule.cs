using Linewright.Brief;
using Linewright.Parts;
using Linewright.Solids.Measures;
using Linewright.Solids.Meshing;
using Linewright.Solids.Shapes;
using Linewright.Solids.Space;

namespace Linewright.Casting;

/// <summary>Gives a part its sprue by rule: as thick as what it feeds asks for, on a face that is polished afterwards.</summary>
internal static class SprueRule
{
    // Over the thickest section. Common practice: 1.2 to 1.5.
    private const double OverSection = 1.25;

    // Thinner runs cold. Common practice.
    private const double LeastMm = 1.5;

    // A flare at the gate, so that no sharp inside corner cracks. Small, so that it reaches no kept face.
    private const double FlareMm = 0.12;

    // From the gate's neck to full width.
    private const double TaperMm = 2;

    /// <summary>Diameter that a part's sprue should have, mm: by the section, by the modulus, and no thinner than runs well.</summary>
    /// <param name="thickestMm">Largest ball in the part.</param>
    /// <param name="modulusMm">Of the part.</param>
    public static double DiameterMm(double thickestMm, double modulusMm)
        => Math.Max(LeastMm, Math.Max(OverSection * thickestMm, Modulus.BarForMm(Modulus.FeedRatio * modulusMm)));

    /// <summary>Part and sprue as solids; not yet meshed.</summary>
    /// <param name="part">The part.</param>
    /// <param name="asCast">Its mesh as cast.</param>
    /// <param name="brief">The brief.</param>
    /// <param name="faces">What tells its faces apart.</param>
    /// <param name="stop">Asks to stop.</param>
    public static SpruedPart Of(Part part, Mesh asCast, ResolvedBrief brief, FaceSource faces, CancellationToken stop)
    {
        var mass = MassProperties.Of(asCast);
        var modulus = Modulus.Of(mass.Volume, mass.Area);
        var (thickest, _) = ThickestSection.Of(part.AsCast);
        var diameter = brief.Process.SprueMm ?? DiameterMm(thickest, modulus);
        var length = brief.Process.SprueLengthMm;
        var site = SprueSearch.Find(faces.Part, faces.AsCast, faces.AllowanceMm, diameter, length, stop);
        site = site is null ? null : site with { Point = site.Point - site.Outward * faces.BackMm };
        var gate = site is null ? 0 : Math.Min(diameter, site.RoomMm);
        return new SpruedPart
        {
            Part = part,
            Site = site,
            SprueMm = diameter,
            GateMm = gate,
            LengthMm = length,
            ModulusMm = modulus,
            ThickestMm = thickest,
            PartMm3 = mass.Volume,
            Solid = site is null ? part.AsCast : Solid.Union(Blend.Fillet(FlareMm), part.AsCast, Sprue(site, gate, diameter, length)),
            Mesh = asCast,
            CastMm3 = mass.Volume,
            Upright = Pose.Identity,
            UprightBox = Bounds.Empty,
            PartBox = Bounds.Empty,
            SprueBox = Bounds.Empty,
        };
    }

    /// <summary>A neck of the gate's width, a taper and a rod, from under the face to the stem.</summary>
    private static Solid Sprue(SprueSite site, double gate, double diameter, double length)
    {
        double low = -site.SinkMm - 0.05;
        if (gate >= diameter)
        {
            // Nearly always; a cylinder is felt much sooner than a profile.
            return Shape.Cylinder(diameter / 2, length - low).Moved(0, 0, (length + low) / 2).Moved(Along(site));
        }

        double neck = Math.Min(site.NeckMm, length / 2), wide = Math.Min(neck + TaperMm, length - 0.5);
        var profile = new (double Radius, double Height)[]
        {
            (-gate / 2, low), (gate / 2, low), (gate / 2, neck), (diameter / 2, wide), (diameter / 2, length),
            (-diameter / 2, length), (-diameter / 2, wide), (-gate / 2, neck),
        };
        return Shape.Revolved(profile).Moved(Along(site));
    }

    /// <summary>The frame whose origin is the gate and whose z axis is the sprue.</summary>
    internal static Pose Along(SprueSite site)
    {
        var axis = Vec3.UnitZ.Cross(site.Outward);
        var turn = axis.Length < 1e-9
            ? site.Outward.Z > 0 ? Pose.Identity : Pose.Turn(Vec3.UnitX, Math.PI)
            : Pose.Turn(axis, Math.Atan2(axis.Length, site.Outward.Z));
        return turn with { Origin = site.Point };
    }
}
