using System.Collections.Immutable;
using Linewright.Assembly;
using Linewright.Brief;
using Linewright.Casting;
using Linewright.Checks;
using Linewright.Making;
using Linewright.Parts;
using Linewright.Solids.Meshing;
using Linewright.Tolerance;

namespace Linewright.Studio.Pieces;

/// <summary>One brief and all that has been computed for it so far. Each stage is computed once, when first asked for.</summary>
/// <remarks>
/// A stage that is asked for twice at a time is computed by the first to come; where that one is stopped, the next takes over.
/// Nothing half-done is kept.
/// </remarks>
/// <param name="design">The numbers.</param>
/// <param name="twin">A piece of the very same solids, from whose brief this one differs only in what no surface shows; its surfaces are taken. Null where there is none.</param>
public sealed class SolvedPiece(LineDesign design, SolvedPiece? twin = null)
{
    private readonly Lazy<Piece> piece = new(() => PartsBuilder.Build(design));
    private readonly Stage<PieceModel> model = new();
    private readonly Stage<ImmutableArray<MeshOutcome>> cast = new();
    private readonly Stage<IReadOnlyList<Finding>> findings = new();
    private readonly Stage<IReadOnlyList<Finding>> walls = new();
    private readonly Stage<CastingPlan> plan = new();
    private readonly Stage<CastingPatterns> casting = new();

    private WorkshopPapers? papers;

    /// <summary>The brief with its defaults.</summary>
    public ResolvedBrief Brief => design.Brief;

    /// <summary>The numbers.</summary>
    public LineDesign Design => design;

    /// <summary>The solids.</summary>
    public Piece Piece => piece.Value;

    /// <summary>Sheet, plates, tolerance and quote.</summary>
    public WorkshopPapers Papers => LazyInitializer.EnsureInitialized(ref papers, () => new WorkshopPapers(this));

    /// <summary>Whose surfaces these are: another piece of the same solids, or this one.</summary>
    internal SolvedPiece Eldest => twin ?? this;

    /// <summary>True where the walls have been measured.</summary>
    internal bool HasWalls => findings.IsThere || walls.IsThere || twin is { HasWalls: true };

    /// <summary>The parts as set, meshed as for the caster, and assembled.</summary>
    public async Task<PieceModel> ModelAsync(IProgress<string> stage, CancellationToken stop)
    {
        var same = twin is null ? null : await twin.ModelAsync(stage, stop).ConfigureAwait(false);
        return await model.GetAsync(
            () =>
            {
                if (same is not null)
                {
                    return PieceModel.Of(Piece, same.AsSet);
                }

                stage.Report("Meshing the parts");
                return PieceModel.Build(Piece, Counting(stage), stop);
            },
            stop).ConfigureAwait(false);
    }

    /// <summary>The meshes of the parts as cast, before they are enlarged.</summary>
    public Task<ImmutableArray<MeshOutcome>> CastAsync(IProgress<string> stage, CancellationToken stop) => twin is not null ? twin.CastAsync(stage, stop) : cast.GetAsync(
        () =>
        {
            stage.Report("Meshing the parts as cast");
            var solids = ImmutableArray.CreateRange(Piece.Parts, part => part.AsCast);
            return PartMeshes.Run(solids, Brief.Process.MeshDeviationUm / 1000, Counting(stage), stop);
        },
        stop);

    /// <summary>Weights, and how the piece is cast; not meshed for the printer.</summary>
    public Task<CastingPlan> PlanAsync(IProgress<string> stage, CancellationToken stop) => plan.GetAsync(
        () =>
        {
            stage.Report("Weighing");
            return CastingPlans.Of(Piece, stop: stop);
        },
        stop);

    /// <summary>Model, patterns and weights: what report and files come from.</summary>
    public async Task<MadePiece> MadeAsync(IProgress<string> stage, CancellationToken stop)
    {
        var worn = await ModelAsync(stage, stop).ConfigureAwait(false);
        var meshes = await CastAsync(stage, stop).ConfigureAwait(false);
        var planned = await PlanAsync(stage, stop).ConfigureAwait(false);
        var chain = Brief.Chain;
        return new MadePiece(worn, [.. Piece.Parts.Select((part, index) => Pattern.Of(part, meshes[index], chain))], planned);
    }

    /// <summary>What every check measured.</summary>
    public async Task<IReadOnlyList<Finding>> FindingsAsync(IProgress<string> stage, CancellationToken stop)
    {
        var worn = await ModelAsync(stage, stop).ConfigureAwait(false);
        return await findings.GetAsync(() => PieceChecks.Run(worn, rule => stage.Report($"Checking {rule}"), stop), stop).ConfigureAwait(false);
    }

    /// <summary>What the wall check measured: of the checks, where they have been run, else by itself.</summary>
    internal async Task<IReadOnlyList<Finding>> WallsAsync(IProgress<string> stage, CancellationToken stop)
    {
        if (findings.IsThere)
        {
            return await FindingsAsync(stage, stop).ConfigureAwait(false);
        }

        if (twin is not null)
        {
            return await twin.WallsAsync(stage, stop).ConfigureAwait(false);
        }

        var worn = await ModelAsync(stage, stop).ConfigureAwait(false);
        return await walls.GetAsync(
            () =>
            {
                stage.Report("Measuring the walls");
                return PieceChecks.Walls(worn, stop);
            },
            stop).ConfigureAwait(false);
    }

    /// <summary>Sprues, plates and trees, meshed for the printer.</summary>
    public async Task<CastingPatterns> CastingAsync(IProgress<string> stage, CancellationToken stop)
    {
        var planned = await PlanAsync(stage, stop).ConfigureAwait(false);
        return await casting.GetAsync(
            () =>
            {
                stage.Report("Spruing the parts");
                return CastingPlans.Patterns(planned, stop);
            },
            stop).ConfigureAwait(false);
    }

    /// <summary>The report with checks, weights and tolerances; meshing the sprued patterns takes as long again and is <see cref="CastingAsync"/>'s.</summary>
    public async Task<Report> ReportAsync(IProgress<string> stage, CancellationToken stop)
    {
        var found = await FindingsAsync(stage, stop).ConfigureAwait(false);
        var made = await MadeAsync(stage, stop).ConfigureAwait(false);
        return Reports.WithFindings(Reports.Of(made), found, Cautions.For(Brief)) with { Tolerance = ToleranceStudy.Of(Piece, found, stop: stop) };
    }

    private Counter Counting(IProgress<string> stage) => new(stage, Piece.Parts.Length);

    private sealed class Counter(IProgress<string> stage, int count) : IProgress<int>
    {
        public void Report(int value) => stage.Report(FormattableString.Invariant($"Meshed {value} of {count} parts"));
    }
}
