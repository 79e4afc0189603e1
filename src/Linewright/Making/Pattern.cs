using Linewright.Materials;
using Linewright.Parts;
using Linewright.Solids.Measures;
using Linewright.Solids.Meshing;

namespace Linewright.Making;

/// <summary>A part as the caster gets it: as cast, then enlarged so that it shrinks to size. Drawn wire stays as it is cut.</summary>
public sealed record Pattern
{
    private Pattern(Part part, MeshOutcome outcome, double scale)
    {
        Part = part;
        Outcome = outcome;
        Scale = scale;
        Mesh = scale == 1 ? outcome.Mesh : outcome.Mesh.Scaled(scale);
        Mass = MassProperties.Of(Mesh);
        Surface = Topology.Inspect(Mesh);
    }

    /// <summary>The part.</summary>
    public Part Part { get; }

    /// <summary>What meshing it as cast gave, before enlarging.</summary>
    public MeshOutcome Outcome { get; }

    /// <summary>How much it was enlarged: 1 / (1 - shrinkage), over all steps.</summary>
    public double Scale { get; }

    /// <summary>The mesh of the file.</summary>
    public Mesh Mesh { get; }

    /// <summary>Volume, surface and centre of the file's mesh.</summary>
    public MassProperties Mass { get; }

    /// <summary>Closedness, holes and components of the file's mesh.</summary>
    public TopologyReport Surface { get; }

    /// <summary>Volume once cast and shrunk, mm3.</summary>
    public double CastMm3 => Mass.Volume / (Scale * Scale * Scale);

    /// <summary>Name of the file in the folder.</summary>
    public string File => $"parts/{Part.Name}.stl";

    /// <summary>Enlarges a part's mesh as cast.</summary>
    /// <param name="part">The part.</param>
    /// <param name="asCast">Its mesh as cast.</param>
    /// <param name="chain">From pattern to finished part. A length is divided by the chain's scale, not multiplied by 1 + shrinkage.</param>
    public static Pattern Of(Part part, MeshOutcome asCast, ProcessChain chain)
    {
        ArgumentNullException.ThrowIfNull(part);
        ArgumentNullException.ThrowIfNull(asCast);
        ArgumentNullException.ThrowIfNull(chain);
        return new Pattern(part, asCast, part.IsCast ? chain.PatternScale : 1);
    }
}
