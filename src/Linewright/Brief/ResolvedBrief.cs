using System.Text.Json.Serialization;
using Linewright.Materials;

namespace Linewright.Brief;

/// <summary>The brief with every default filled in: what the layout starts from and what the report prints.</summary>
/// <remarks>
/// Written as JSON it is a brief again, and resolves to itself. The only nulls left are measures that a later
/// room derives from the pitch, and the form of length that was not asked for.
/// </remarks>
public sealed record ResolvedBrief(
    string Name,
    StoneBrief Stone,
    string Metal,
    LengthBrief Length,
    SettingBrief Setting,
    HingeBrief Hinge,
    LinkBrief Link,
    ClaspBrief Clasp,
    ProcessBrief Process,
    WristBrief Wrist,
    FinishBrief Finish)
{
    /// <summary>The alloy that <see cref="Metal"/> names.</summary>
    [JsonIgnore]
    public Alloy Alloy => MaterialTables.Alloys.Find(Metal);

    /// <summary>The species that the stone names.</summary>
    [JsonIgnore]
    public Species Species => MaterialTables.Species.Find(Stone.Species);

    /// <summary>The steps from drawing to finished part, as <see cref="Process"/> describes them for the metal.</summary>
    [JsonIgnore]
    public ProcessChain Chain => ProcessChain.Of(Process.Route, MaterialTables.ProcessOf(Alloy).LinearShrinkPercent)
        .WithTotals(Process.ShrinkPercent, Process.FinishLossMm);
}
