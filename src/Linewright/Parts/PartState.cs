namespace Linewright.Parts;

/// <summary>When a part is looked at: as it leaves the casting, or as it is worn.</summary>
public enum PartState
{
    /// <summary>Claws long and upright, eyes open, polished faces still with their allowance. Before compensation for shrinkage.</summary>
    AsCast,

    /// <summary>Claws bent over the crown, eyes closed, polished to size.</summary>
    AsSet,
}
