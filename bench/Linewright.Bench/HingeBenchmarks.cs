using BenchmarkDotNet.Attributes;
using Linewright.Assembly;
using Linewright.Parts;
using Linewright.Solids.Measures;
using Linewright.Solids.Space;

namespace Linewright.Bench;

/// <summary>A hinge's whole range, inwards and backwards, to a hundredth of a degree.</summary>
public class HingeBenchmarks
{
    private const double MostInward = 75 * Math.PI / 180, MostBackwards = 40 * Math.PI / 180;
    private const double SpacingMm = 0.1;

    private Body[] eyeSide = [], barSide = [];
    private Pose next;
    private Vec3 axis;

    /// <summary>Diameter of the stones, mm; the smallest have drawn pins.</summary>
    [Params(1.5, 3.0, 4.0)]
    public double StoneMm { get; set; }

    [GlobalSetup]
    public void Build()
    {
        var piece = Bracelet.Of(StoneMm);
        var model = PieceModel.Build(piece);
        var stone = piece.Stone.Body.ToMesh().Moved(Pose.Move(0, 0, piece.Link.GirdleHeightMm));
        Body Stone(Func<Vec3, bool> where) => new("stone", piece.SeatedStone, ProbeSurface.Of(piece.SeatedStone, stone, SpacingMm, where));
        eyeSide = [model.BodyOf(PartRole.Link, p => p.X > 0), Stone(p => p.X > 0)];
        barSide = [model.BodyOf(PartRole.Link, p => p.X < 0), Stone(p => p.X < 0)];
        if (piece.Find(PartRole.Pin) is { } pin)
        {
            var at = Pose.Move(piece.Link.BarAxis);
            var solid = pin.AsSet.Moved(at);
            barSide = [.. barSide, new Body("pin", solid, ProbeSurface.Of(solid, model.MeshOf(PartRole.Pin).Mesh.Moved(at), SpacingMm))];
        }

        // The play shared out evenly.
        var back = piece.Hinge.PlayMm;
        next = Pose.Move(piece.Link.PitchMm - back, 0, 0);
        axis = piece.Link.NextBarAxis - new Vec3(back, 0, 0);
        var (inward, backwards) = BothWays();
        Console.WriteLine(FormattableString.Invariant(
            $"// {StoneMm} mm: {double.RadiansToDegrees(inward.Angle):0.00} deg inwards, {double.RadiansToDegrees(backwards.Angle):0.00} deg backwards"));
    }

    /// <summary>Both ways.</summary>
    [Benchmark]
    public (FirstContactResult Inward, FirstContactResult Backwards) BothWays()
        => (Turn(Vec3.UnitY, MostInward), Turn(-Vec3.UnitY, MostBackwards));

    private FirstContactResult Turn(Vec3 about, double most)
        => FirstContact.Turning(eyeSide, Pose.Identity, barSide, next, axis, about, most);
}
