using Linewright.Assembly;

namespace Linewright.Checks;

/// <summary>One family of checks: measures something on the piece and says what it found.</summary>
internal interface ICheck
{
    /// <summary>Measures, and reports each result, passed ones too.</summary>
    IEnumerable<Finding> Run(PieceModel model, CancellationToken stop);
}
