using Linewright.Files;
using Linewright.Parts;
using Linewright.Solids.Measures;
using Linewright.Solids.Meshing;
using Linewright.Tests.Core;

namespace Linewright.Tests.Files;

/// <summary>The parts of real lines before a solid kernel that we did not write.</summary>
public class RealPartsTests
{
    // Coarser than a caster's file, so that four lines take seconds; the kernel judges the mesh, not the solid behind it.
    private static readonly MeshSettings Settings = new(0.08, 0.03, true);

    [Fact]
    public void A_solid_kernel_finds_every_part_of_every_size_closed_whole_and_as_large_as_we_say()
    {
        // Skips before the work where there is no judge.
        _ = OutsideTools.Oracle();
        var claims = new List<(string Name, MeshOutcome Outcome, ScratchFile File)>();
        try
        {
            foreach (var diameter in (double[])[1.5, 2.5, 4, 6.5])
            {
                foreach (var part in CheckedPieces.Piece(diameter, "gold-750-yellow").Parts)
                {
                    foreach (var state in Enum.GetValues<PartState>().Where(state => part.IsCast || state == PartState.AsSet))
                    {
                        var outcome = Mesher.Run(state == PartState.AsSet ? part.AsSet : part.AsCast, Settings, stop: TestContext.Current.CancellationToken);
                        claims.Add((
                            FormattableString.Invariant($"{part.Name}, stones of {diameter}, {state}"),
                            outcome,
                            new ScratchFile($"{part.Name}.stl", stream => StlWriter.Write(stream, outcome.Mesh, part.Name))));
                    }
                }
            }

            var found = OutsideTools.Oracle([.. claims.Select(claim => claim.File.Path)]);

            // Link, box, tongue and safety twice, and a pin below 2.5 mm.
            Assert.Equal(4 * 8 + 1, found.Count);
            Assert.All(claims.Zip(found), pair =>
            {
                var ((name, outcome, _), verdict) = pair;
                Assert.True(outcome.Status == MeshStatus.Meshed && verdict.IsManifold, $"{name}: {outcome.Status}, {verdict.Status}");
                var ours = Topology.Inspect(outcome.Mesh);
                Assert.Equal((name, ours.Genus, 1, outcome.Mesh.TriangleCount), (name, verdict.Genus, verdict.Bodies, verdict.Triangles));
                var volume = MassProperties.Of(outcome.Mesh).Volume;
                Assert.InRange(verdict.Volume, 0.999 * volume, 1.001 * volume);
            });
        }
        finally
        {
            claims.ForEach(claim => claim.File.Dispose());
        }
    }
}
