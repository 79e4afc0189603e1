using System.Collections.Immutable;
using Linewright.Solids.Space;

namespace Linewright.Casting;

/// <summary>Stands sprued patterns on as many plates as they need, sprues down, a gap apart.</summary>
internal static class PlateNesting
{
    /// <summary>The plates, and which parts fit on none.</summary>
    /// <param name="parts">The sprued parts.</param>
    /// <param name="sizeX">Width of a plate.</param>
    /// <param name="sizeY">Depth of a plate.</param>
    /// <param name="sizeZ">Height that is built.</param>
    /// <param name="gap">Between two parts.</param>
    public static (ImmutableArray<PrintPlate> Plates, ImmutableArray<int> TooLarge) Of(
        ImmutableArray<SpruedPart> parts, double sizeX, double sizeY, double sizeZ, double gap)
    {
        var plates = new List<(Skyline Skyline, ImmutableArray<(int, Pose)>.Builder Places)>();
        var tooLarge = ImmutableArray.CreateBuilder<int>();

        // The largest footprint first; where two are alike, in the order of the parts.
        foreach (var (part, index) in parts.Select((part, index) => (part, index)).OrderByDescending(entry => Footprint(entry.part)).ThenBy(entry => entry.index))
        {
            var (box, size) = (part.UprightBox, part.UprightBox.Size);
            var fits = size.Z <= sizeZ && new Skyline(sizeX, sizeY, gap).Place(size.X, size.Y) is not null;
            if (!fits)
            {
                tooLarge.Add(index);
                continue;
            }

            for (var copy = 0; copy < part.Part.Count; copy++)
            {
                var stood = false;
                for (var plate = 0; !stood; plate++)
                {
                    if (plate == plates.Count)
                    {
                        plates.Add((new Skyline(sizeX, sizeY, gap), ImmutableArray.CreateBuilder<(int, Pose)>()));
                    }

                    if (plates[plate].Skyline.Place(size.X, size.Y) is { } place)
                    {
                        plates[plate].Places.Add((index, Stand(part, box, place)));
                        stood = true;
                    }
                }
            }
        }

        return ([.. plates.Select(plate => new PrintPlate(plate.Places.ToImmutable()))], tooLarge.ToImmutable());
    }

    private static double Footprint(SpruedPart part) => part.UprightBox.Size.X * part.UprightBox.Size.Y;

    private static Pose Stand(SpruedPart part, Bounds box, (double X, double Y, bool IsTurned) place)
    {
        var turned = place.IsTurned ? part.Upright.Then(Pose.Turn(Vec3.UnitZ, Math.PI / 2)) : part.Upright;

        // A quarter turn takes (x, y) to (-y, x).
        var low = place.IsTurned ? new Vec3(-box.High.Y, box.Low.X, box.Low.Z) : box.Low;
        return turned.Then(Pose.Move(place.X - low.X, place.Y - low.Y, -low.Z));
    }
}
