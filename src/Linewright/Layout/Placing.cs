using System.Collections.Immutable;
using Linewright.Solids.Space;

namespace Linewright.Layout;

/// <summary>Turns hinge points into placements.</summary>
internal static class Placing
{
    /// <summary>Links between hinge points that run around the y axis with the skin inside: z of each piece points out.</summary>
    /// <param name="hinges">One more than there are pieces; links first, the clasp last.</param>
    /// <param name="hingeHeight">Hinge axes over the skin, mm.</param>
    public static ImmutableArray<LinkPlacement> AroundY(IReadOnlyList<Vec3> hinges, double hingeHeight)
        => Place(hinges, hingeHeight, along => (Vec3.UnitY, along.Cross(Vec3.UnitY)));

    /// <summary>Links between hinge points in a plane of constant height, stones up.</summary>
    /// <param name="hinges">One more than there are pieces; links first, the clasp last.</param>
    /// <param name="hingeHeight">Hinge axes over the skin, mm.</param>
    public static ImmutableArray<LinkPlacement> OnTable(IReadOnlyList<Vec3> hinges, double hingeHeight)
        => Place(hinges, hingeHeight, along => (Vec3.UnitZ.Cross(along), Vec3.UnitZ));

    private static ImmutableArray<LinkPlacement> Place(IReadOnlyList<Vec3> hinges, double hingeHeight, Func<Vec3, (Vec3 Across, Vec3 Up)> frame)
    {
        var pieces = hinges.Count - 1;
        var placements = ImmutableArray.CreateBuilder<LinkPlacement>(pieces);
        for (var i = 0; i < pieces; i++)
        {
            var along = (hinges[i + 1] - hinges[i]).Normalised();
            var (across, up) = frame(along);
            var origin = (hinges[i] + hinges[i + 1]) * 0.5 - up * hingeHeight;
            placements.Add(new LinkPlacement(i, i == pieces - 1, new Pose(along, across, up, origin)));
        }

        return placements.MoveToImmutable();
    }
}
