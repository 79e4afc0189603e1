using Linewright.Materials;

namespace Linewright.Brief;

/// <summary>Fills in everything that a brief leaves open, by the trade's rules of thumb.</summary>
public static class BriefDefaults
{
    // How far claws lie over the crown: middle of each row of the trade's table, by the middle of its diameters.
    // Common practice; interpolated between rows, held outside them.
    private static readonly (double DiameterMm, double CoverMm)[] Cover =
    [
        (1.15, 0.175), (1.65, 0.20), (2.2, 0.225), (2.7, 0.25), (3.2, 0.275), (3.7, 0.315), (4.45, 0.36), (5.7, 0.44), (7.25, 0.55), (8.0, 0.62),
    ];

    /// <summary>The brief with every default filled in.</summary>
    public static ResolvedBrief Resolve(DesignBrief brief)
    {
        double Value(string path) => brief.Number(path) ?? throw new InvalidOperationException($"The brief has no {path} and it has no default.");
        var metal = brief.Text("metal")!;
        var d = Value("stone.diameter_mm");
        var gap = brief.Number("link.stone_gap_mm") ?? StoneGapMm(d);
        return new ResolvedBrief(
            brief.Text("name")!,
            new StoneBrief(
                Word<StoneCut>(brief, "stone.cut"), brief.Text("stone.species")!, d,
                Value("stone.table_percent"), Value("stone.crown_deg"), Value("stone.pavilion_deg"),
                Value("stone.star_percent"), Value("stone.lower_half_percent"), Value("stone.girdle_percent"),
                (int)Value("stone.girdle_facets"), Value("stone.culet_percent")),
            metal,
            Length(brief),
            new SettingBrief(
                brief.Number("setting.claw_mm") ?? ClawMm(d), Value("setting.seat_fraction"),
                brief.Number("setting.cover_mm") ?? CoverMm(d), brief.Number("setting.tip_rise_mm") ?? TipRiseMm(d),
                Value("setting.culet_clearance_mm")),
            new HingeBrief(
                Word<HingeKind>(brief, "hinge.kind"), brief.Number("hinge.bar_mm"), brief.Number("hinge.eye_wall_mm"),
                brief.Number("hinge.eye_width_mm"), brief.Number("hinge.cheek_mm"), brief.Number("hinge.diametral_clearance_mm"),
                Value("hinge.side_clearance_mm"), Value("hinge.relief_mm"), Value("hinge.outward_stop_deg")),
            new LinkBrief(
                gap, brief.Number("link.stone_gap_min_mm") ?? 0.8 * gap, brief.Number("link.stone_gap_max_mm") ?? 1.45 * gap,
                brief.Number("link.rail_mm"), Value("link.opening_percent"), Value("link.edge_radius_mm"), Value("link.fillet_mm")),
            new ClaspBrief(
                Word<ClaspKind>(brief, "clasp.kind"), brief.Number("clasp.length_min_mm"), brief.Number("clasp.length_max_mm"),
                brief.Number("clasp.wall_mm") ?? ClaspWallMm(metal), brief.Number("clasp.tongue_mm"), Value("clasp.press_mm"), Value("clasp.side_play_mm"),
                Value("clasp.width_ratio"), Word<Temper>(brief, "clasp.temper"), brief.Flag("clasp.safety")!.Value),
            Process(brief, metal),
            new WristBrief(Value("wrist.depth_ratio"), Value("wrist.exponent")),
            new FinishBrief(Value("finish.rhodium_um")));
    }

    /// <summary>Finished claw diameter for a round stone, mm: fitted to the trade's table, never under 0.55 nor over what the table takes for large stones.</summary>
    /// <remarks>Common practice; the two branches of the fit meet at 2.8 mm, and at 5.6 mm it reaches the 1.20 that the table allows up to 6.4.</remarks>
    public static double ClawMm(double diameterMm)
    {
        var fit = diameterMm < 2.8 ? 0.20 * diameterMm + 0.22 : 0.15 * diameterMm + 0.36;
        return Math.Clamp(fit, 0.55, 1.20 + 0.1 * Math.Max(0, diameterMm - 6.4));
    }

    /// <summary>How far a claw's tip lies over the crown, mm. Common practice, interpolated.</summary>
    public static double CoverMm(double diameterMm)
    {
        if (diameterMm <= Cover[0].DiameterMm)
        {
            return Cover[0].CoverMm;
        }

        for (var row = 1; row < Cover.Length; row++)
        {
            var (low, high) = (Cover[row - 1], Cover[row]);
            if (diameterMm <= high.DiameterMm)
            {
                return low.CoverMm + (high.CoverMm - low.CoverMm) * (diameterMm - low.DiameterMm) / (high.DiameterMm - low.DiameterMm);
            }
        }

        return Cover[^1].CoverMm;
    }

    /// <summary>How far a claw stands over the table as cast, mm: a tenth of the stone, at least 0.3.</summary>
    /// <remarks>Source read: casting houses' rules, 10 % or 0.3 to 0.6 mm.</remarks>
    public static double TipRiseMm(double diameterMm) => Math.Max(0.3, 0.10 * diameterMm);

    /// <summary>Preferred gap between two girdles across a hinge, mm.</summary>
    /// <remarks>
    /// Assumed: a line through the worked link of 4.0 mm at a pitch of 4.5. Small stones keep a wider gap than the
    /// trade's 0.20 to 0.35, because the joint under them is no smaller and must still bend backwards.
    /// </remarks>
    public static double StoneGapMm(double diameterMm) => Math.Round(0.30 + 0.05 * diameterMm, 9); // so that a gap that messages name is the gap

    /// <summary>Wall of the clasp's box, mm.</summary>
    /// <remarks>Common practice: 0.8. A metal that casts no thinner than that keeps a twentieth of a millimetre for the finish. Assumed.</remarks>
    public static double ClaspWallMm(string metal)
        => Math.Max(0.8, MaterialTables.ProcessOf(MaterialTables.Alloys.Find(metal)).MinimumWallMm + ClaspSpareMm);

    /// <summary>What the wall of a clasp's box keeps over the least wall for the finish. Assumed.</summary>
    internal const double ClaspSpareMm = 0.05;

    private static LengthBrief Length(DesignBrief brief)
    {
        if (brief.Has("length.wrist_mm"))
        {
            return new LengthBrief(null, brief.Number("length.wrist_mm"), brief.Number("length.ease_mm"));
        }

        var flat = brief.Number("length.laid_flat_mm") ?? InMm(brief.Number("length.laid_flat_in")!.Value);
        return new LengthBrief(flat, null, null);
    }

    // What nobody has measured comes from the route's rows; rounded, so that what the report says is what holds.
    private static ProcessBrief Process(DesignBrief brief, string metal)
    {
        double Value(string path) => brief.Number(path)!.Value;
        var route = brief.Text("process.route")!;
        var chain = ProcessChain.Of(route, MaterialTables.ProcessOf(MaterialTables.Alloys.Find(metal)).LinearShrinkPercent);
        return new ProcessBrief(
            route,
            brief.Number("process.shrink_percent") ?? chain.ShrinkPercent,
            brief.Number("process.finish_loss_mm") ?? Math.Round(chain.AllowanceMm(FaceKind.Polished), 9),
            brief.Number("process.tolerance_mm") ?? Math.Round(chain.SizeSpreadMm, 4),
            brief.Number("process.scale_spread_percent") ?? Math.Round(100 * chain.ScaleSpread, 4),
            brief.Number("process.common_spread_um") ?? Math.Round(1000 * chain.CommonFaceSpreadMm, 2),
            brief.Number("process.finish_spread_um") ?? Math.Round(1000 * chain.LossSpreadMm, 2),
            brief.Number("process.fit_spread_um"),
            Value("process.wall_reserve_mm"),
            Value("process.wall_shortfall_mm"),
            Value("process.mesh_deviation_um"),
            brief.Number("process.sprue_mm"),
            Value("process.sprue_length_mm"),
            brief.Number("process.stem_mm"),
            (int)Value("process.parts_per_tree"),
            Value("process.plate_x_mm"),
            Value("process.plate_y_mm"),
            Value("process.plate_z_mm"),
            Value("process.plate_gap_mm"));
    }

    // In decimals, so that 25.4 mm to the inch is exact, and 7 in is 177.8 mm, not a last digit less.
    private static double InMm(double inches) => (double)((decimal)inches * 25.4m);

    // The words of a choice are the members in lower case with hyphens between their parts.
    private static TEnum Word<TEnum>(DesignBrief brief, string path)
        where TEnum : struct, Enum
        => Enum.Parse<TEnum>(brief.Text(path)!.Replace("-", "", StringComparison.Ordinal), ignoreCase: true);
}
