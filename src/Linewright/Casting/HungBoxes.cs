using Linewright.Solids.Space;

namespace Linewright.Casting;

/// <summary>What a part on a tree takes up: a box about the part and a slim one about its sprue.</summary>
internal sealed class HungBoxes
{
    private readonly TiltedBox part, sprue;

    /// <summary>A sprued part in a tree.</summary>
    /// <param name="sprued">The part.</param>
    /// <param name="pose">From the upright mesh's frame to the tree's.</param>
    public HungBoxes(SpruedPart sprued, Pose pose)
    {
        part = new TiltedBox(sprued.PartBox, pose);
        sprue = new TiltedBox(sprued.SprueBox, pose);
    }

    /// <summary>Lowest point.</summary>
    public double LowestZ => Math.Min(part.LowestZ, sprue.LowestZ);

    /// <summary>Highest point.</summary>
    public double HighestZ => Math.Max(part.HighestZ, sprue.HighestZ);

    /// <summary>Furthest corner from the stem's axis.</summary>
    public double FurthestFromAxis => Math.Max(part.FurthestFromAxis, sprue.FurthestFromAxis);

    /// <summary>True where the two parts keep a gap from each other and from each other's sprues.</summary>
    public bool Clears(HungBoxes other, double gapMm)
        => TiltedBox.Gap(part, other.part) >= gapMm
            && TiltedBox.Gap(part, other.sprue) >= gapMm
            && TiltedBox.Gap(sprue, other.part) >= gapMm
            && TiltedBox.Gap(sprue, other.sprue) > 0;
}
