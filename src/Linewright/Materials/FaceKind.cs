namespace Linewright.Materials;

/// <summary>What happens to a face of a casting on its way to the finished piece.</summary>
public enum FaceKind
{
    /// <summary>Tumbled and polished: it loses metal, so its pattern is grown.</summary>
    Polished,

    /// <summary>A bearing, bore, bar, catch or relief: nothing is taken off, so its pattern keeps its size.</summary>
    Kept,
}
