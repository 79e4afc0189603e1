using Linewright.Brief;
using Linewright.Materials;
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

    /// <summary>What finishing takes where a brief says that it takes nothing, only to tell faces apart. Common practice: 0.10 a polished face.</summary>
    internal const double UsualLossMm = 0.10;

    /// <summary>Diameter that a part's sprue should have, mm: by the section, by the modulus, and no thinner than runs well.</summary>
    /// <param name="thickestMm">Largest ball in the part.</param>
    /// <param name="modulusMm">Of the part.</param>
    public static double DiameterMm(double thickestMm, double modulusMm)
        => Math.Max(LeastMm, Math.Max(OverSection * thickestMm, Modulus.BarForMm(Modulus.FeedRatio * modulusMm)));

    /// <summary>The part as cast with its sprue, weighed; null where the part has no surface.</summary>
    /// <param name="part">The part.</param>
    /// <param name="drawn">The same part drawn with an allowance, where it has none; it tells the faces apart.</param>
    /// <param name="brief">The brief.</param>
    /// <param name="stop">Asks to stop.</param>
    public static SpruedPart? Of(Part part, Part? drawn, ResolvedBrief brief, CancellationToken stop)
    {
        var alone = Weighing.Mesh(part.AsCast, part.AsCast, stop);
        if (alone.Mesh.TriangleCount == 0)
        {
            return null;
        }

        var mass = MassProperties.Of(alone.Mesh, part.AsCast);
        var modulus = Modulus.Of(mass.Volume, mass.Area);
        var (thickest, _) = ThickestSection.Of(part.AsCast);
        var diameter = brief.Process.SprueMm ?? DiameterMm(thickest, modulus);
        var length = brief.Process.SprueLengthMm;
        var faces = drawn is null
            ? new FaceSource(part, alone.Mesh, brief.Chain.AllowanceMm(FaceKind.Polished), 0)
            : new FaceSource(drawn, Weighing.Mesh(drawn.AsCast, drawn.AsCast, stop).Mesh, UsualLossMm, UsualLossMm);
        var site = SprueSearch.Find(faces.Part, faces.AsCast, faces.AllowanceMm, diameter, length, stop);
        site = site is null ? null : site with { Point = site.Point - site.Outward * faces.BackMm };
        var gate = site is null ? 0 : Math.Min(diameter, site.RoomMm);
        var solid = site is null ? part.AsCast : Solid.Union(Blend.Fillet(FlareMm), part.AsCast, Sprue(site, gate, diameter, length));
        var whole = site is null ? alone : Weighing.Mesh(solid, part.AsCast, stop);
        var scale = brief.Chain.PatternScale;
        var upright = UprightOf(site, length, scale);
        var box = BoxOf(whole, brief.Process.MeshDeviationUm / 1000, scale, upright);
        var foot = diameter / 2 * scale;
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
            Solid = solid,
            CastMm3 = site is null ? mass.Volume : MassProperties.Of(whole.Mesh, solid).Volume,
            Upright = upright,
            UprightBox = site is null ? box : box with { Low = new Vec3(box.Low.X, box.Low.Y, 0) },
            PartBox = BoxOf(alone, 0, scale, upright),
            SprueBox = Bounds.Around(foot, foot, 0) with { High = new Vec3(foot, foot, length * scale) },
        };
    }

    // The sprue's axis turned downwards, its foot into the origin.
    private static Pose UprightOf(SprueSite? site, double length, double scale)
    {
        if (site is null)
        {
            return Pose.Identity;
        }

        var foot = Along(site) with { Origin = (site.Point + site.Outward * length) * scale };
        return foot.Inverse().Then(Pose.Turn(Vec3.UnitX, Math.PI));
    }

    // Another mesh may reach further by as much as this one was found off its solid, and by as much as that one may be. The sprue's foot is
    // a flat at 0 that every mesh meets.
    private static Bounds BoxOf(MeshOutcome outcome, double furtherMm, double scale, Pose upright)
        => outcome.Mesh.Scaled(scale).Moved(upright).Bounds.Grown((outcome.CertifiedDeviationMm + furtherMm) * scale);

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
