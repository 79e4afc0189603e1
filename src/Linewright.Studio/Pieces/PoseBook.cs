using System.Collections.Immutable;
using Linewright.Assembly;
using Linewright.Layout;
using Linewright.Parts;
using Linewright.Solids.Space;

namespace Linewright.Studio.Pieces;

/// <summary>The poses in which the view shows a piece. All are of the real line: rigid parts that turn at their hinges.</summary>
public static class PoseBook
{
    // Opened, a line on the table bends by about half of what it does on the wrist.
    private const double OpenShare = 0.55;

    /// <summary>Every pose.</summary>
    public static ImmutableArray<PosedLine> All(Piece piece)
    {
        ArgumentNullException.ThrowIfNull(piece);
        var round = WristFit.Solve(piece.Layout.Chain, 1, 2);
        var poses = ImmutableArray.CreateBuilder<PosedLine>();
        poses.Add(PosedLine.Of("flat", LineAssembly.Flat(piece)));
        poses.Add(PosedLine.Of("wrist", LineAssembly.Closed(piece)));
        if (round.Fits)
        {
            poses.Add(PosedLine.Of("round", LineAssembly.Place(piece, round.Fit.Placements)));
            poses.Add(Open(piece, round.Fit.HingeAngles));
        }

        poses.Add(Few("link", piece, [Pose.Identity], null));
        poses.Add(Few("joint", piece, [Pose.Identity, Pose.Move(piece.Layout.PitchMm - piece.Hinge.PlayMm, 0, 0)], null));
        poses.Add(Clasp(piece));
        poses.Add(Apart(piece));
        return poses.ToImmutable();
    }

    private static PosedLine Open(Piece piece, ImmutableArray<double> turns)
    {
        var chain = piece.Layout.Chain;
        var count = chain.Count;

        // Walk from hinge to hinge; the skin lies inside, so the line bends towards -z.
        var heading = OpenShare * turns.Skip(1).Take(count - 1).Sum() / 2;
        var hinge = Vec3.Zero;
        var placements = ImmutableArray.CreateBuilder<LinkPlacement>(count + 1);
        for (var i = 0; i <= count; i++)
        {
            heading -= i == 0 ? 0 : OpenShare * turns[i];
            var length = i == count ? chain.ClaspMm : chain.PitchMm;
            var frame = Frame(heading);
            var middle = hinge + frame.AxisX * (length / 2) - frame.AxisZ * chain.HingeHeightMm;
            placements.Add(new LinkPlacement(i, i == count, frame with { Origin = middle }));
            hinge += frame.AxisX * length;
        }

        // The tongue stays with the first link, the box with the last.
        var line = PosedLine.Of("open", LineAssembly.Place(piece, placements.ToImmutable()));
        var first = Frame(OpenShare * turns.Skip(1).Take(count - 1).Sum() / 2 + OpenShare * turns[0]);
        var tongue = first with { Origin = -first.AxisX * chain.ClaspMm - first.AxisZ * chain.HingeHeightMm };
        return Centred(line with { Parts = line.Parts.SetItem(PartRole.Tongue, [tongue]) });
    }

    private static Pose Frame(double heading)
    {
        var along = new Vec3(Math.Cos(heading), 0, Math.Sin(heading));
        return new Pose(along, Vec3.UnitY, along.Cross(Vec3.UnitY), Vec3.Zero);
    }

    private static PosedLine Clasp(Piece piece)
    {
        var (pitch, clasp) = (piece.Layout.PitchMm, piece.Clasp.LengthMm);
        return Few("clasp", piece, [Pose.Move(clasp + pitch / 2, 0, 0), Pose.Move(-pitch / 2, 0, 0)], Pose.Identity);
    }

    private static PosedLine Apart(Piece piece)
    {
        var (pitch, clasp, d) = (piece.Layout.PitchMm, piece.Clasp.LengthMm, piece.Stone.DiameterMm);
        var step = 1.9 * pitch;
        var (box, tongue) = (Pose.Move(0, 0, 0), Pose.Move(0.95 * clasp, 0, 0));
        ImmutableArray<Pose> links =
        [
            Pose.Move(-0.8 * pitch - step, 0, 0), Pose.Move(-1.1 * pitch, 0, 0), Pose.Move(1.95 * clasp + 1.1 * pitch, 0, 0), Pose.Move(1.95 * clasp + 0.8 * pitch + step, 0, 0),
        ];
        var apart = Few("apart", piece, links, box);
        var seat = Pose.Move(0, 0, piece.Link.GirdleHeightMm + 1.5 * d);
        var pins = piece.Find(PartRole.Pin) is null
            ? ImmutableArray<Pose>.Empty
            : [.. links.Select(link => Pose.Move(piece.Link.BarAxis - new Vec3(0, 1.6 * piece.Link.WidthMm, 0)).Then(link))];
        return Centred(apart with
        {
            Parts = apart.Parts.SetItem(PartRole.Tongue, [tongue])
                .SetItem(PartRole.Safety, piece.Find(PartRole.Safety) is null ? [] : [Pose.Move(0.45 * clasp, -0.9 * piece.Clasp.WidthMm, 0)])
                .SetItem(PartRole.Pin, pins),
            Stones = [.. links.Select(link => seat.Then(link))],
        });
    }

    private static PosedLine Few(string name, Piece piece, ImmutableArray<Pose> links, Pose? clasp)
    {
        var parts = ImmutableDictionary.CreateBuilder<PartRole, ImmutableArray<Pose>>();
        parts[PartRole.Link] = links;
        if (clasp is { } at)
        {
            foreach (var role in (PartRole[])[PartRole.Box, PartRole.Tongue, PartRole.Safety])
            {
                parts[role] = piece.Find(role) is null ? [] : [at];
            }
        }

        if (piece.Find(PartRole.Pin) is not null)
        {
            var bars = links.Select(link => Pose.Move(piece.Link.BarAxis).Then(link)).ToList();
            if (clasp is { } box)
            {
                bars.Add(Pose.Move(0, 0, piece.Hinge.HeightMm).Then(box));
            }

            parts[PartRole.Pin] = [.. bars];
        }

        var seat = Pose.Move(0, 0, piece.Link.GirdleHeightMm);
        return new PosedLine(name, parts.ToImmutable(), [.. links.Select(link => seat.Then(link))]);
    }

    private static PosedLine Centred(PosedLine line)
    {
        var all = line.Parts.Values.SelectMany(poses => poses).Select(pose => pose.Origin).ToList();
        var middle = new Vec3((all.Min(p => p.X) + all.Max(p => p.X)) / 2, 0, (all.Min(p => p.Z) + all.Max(p => p.Z)) / 2);
        Pose Moved(Pose pose) => pose with { Origin = pose.Origin - middle };
        return line with
        {
            Parts = line.Parts.ToImmutableDictionary(pair => pair.Key, pair => pair.Value.Select(Moved).ToImmutableArray()),
            Stones = [.. line.Stones.Select(Moved)],
        };
    }
}
