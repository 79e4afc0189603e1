using System.Collections.Immutable;
using Linewright.Assembly;

namespace Linewright.Checks;

/// <summary>Front door of the room: runs every check on a piece as it is worn.</summary>
public static class PieceChecks
{
    // In the order in which a maker reads them: does it close, does it move, does it hold the stones, does it last.
    private static readonly ImmutableArray<ICheck> All =
    [
        new FitCheck(),
        new HingeRangeCheck(),
        new NeighbourGapCheck(),
        new PlayCheck(),
        new RunningCheck(),
        new SettingCheck(),
        new StoneRoomCheck(),
        new LinkHeightCheck(),
        new WallCheck(),
        new StrengthCheck(),
        new ClaspCheck(),
        new TongueCheck(),
        new CatchCheck(),
        new ClaspHingeCheck(),
        new MetalCheck(),
        new CastableCheck(),
    ];

    /// <summary>Runs all checks, side by side; findings come in the order of the checks, whatever ends first.</summary>
    /// <param name="model">The piece.</param>
    /// <param name="starting">Told the name of each check as it starts.</param>
    /// <param name="stop">Asks to stop.</param>
    public static IReadOnlyList<Finding> Run(PieceModel model, Action<string>? starting = null, CancellationToken stop = default)
    {
        ArgumentNullException.ThrowIfNull(model);
        var found = new ImmutableArray<Finding>[All.Length];
        Parallel.For(0, All.Length, new ParallelOptions { CancellationToken = stop }, i =>
        {
            starting?.Invoke(Words(All[i].GetType().Name));
            found[i] = [.. All[i].Run(model, stop)];
        });
        return [.. found.SelectMany(findings => findings)];
    }

    /// <summary>Measures the walls only: what a study of tolerances needs of the checks.</summary>
    /// <param name="model">The piece.</param>
    /// <param name="stop">Asks to stop.</param>
    public static IReadOnlyList<Finding> Walls(PieceModel model, CancellationToken stop = default)
    {
        ArgumentNullException.ThrowIfNull(model);
        return [.. new WallCheck().Run(model, stop)];
    }

    // "HingeRangeCheck" reads as "hinge range".
    private static string Words(string typeName)
    {
        var name = typeName.EndsWith("Check", StringComparison.Ordinal) ? typeName[..^5] : typeName;
        return string.Concat(name.Select((letter, at) => at > 0 && char.IsUpper(letter) ? $" {char.ToLowerInvariant(letter)}" : $"{char.ToLowerInvariant(letter)}"));
    }
}
