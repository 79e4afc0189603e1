namespace Linewright.Checks;

/// <summary>A check's name, unit and where its limits come from: everything of a <see cref="Finding"/> that does not change.</summary>
/// <param name="Name">Lower case with hyphens.</param>
/// <param name="Unit">Of what is measured and of the limit.</param>
/// <param name="Source">Where the limit comes from.</param>
/// <param name="Mark">One of <see cref="Materials.Marks"/>.</param>
internal sealed record CheckRule(string Name, string Unit, string Source, string Mark)
{
    /// <summary>Passes from the wanted value up, fails below the least.</summary>
    public Finding AtLeast(string where, double measured, double wanted, double least, string cure)
        => Between(where, measured, wanted, double.PositiveInfinity, least, double.PositiveInfinity, cure);

    /// <summary>Passes up to the wanted value, fails above the most.</summary>
    public Finding AtMost(string where, double measured, double wanted, double most, string cure)
        => Between(where, measured, double.NegativeInfinity, wanted, double.NegativeInfinity, most, cure);

    /// <summary>Passes between two values, fails outside two wider ones; the limit printed is the one that was passed or is nearer.</summary>
    public Finding Between(string where, double measured, double low, double high, double worstLow, double worstHigh, string cure)
    {
        var verdict = Holds(low, high) ? Verdict.Pass : Holds(worstLow, worstHigh) ? Verdict.Caution : Verdict.Fail;
        var isLow = measured - low < high - measured;
        var limit = double.IsInfinity(high) || (isLow && !double.IsInfinity(low)) ? low : high;
        return Says(verdict, where, measured, limit, verdict == Verdict.Pass ? "" : cure);

        // What was designed to a limit and is measured to a micrometre must not miss it by that micrometre.
        bool Holds(double least, double most) => measured >= least - Hair(least) && measured <= most + Hair(most);
        static double Hair(double bound) => double.IsInfinity(bound) ? 0 : 1e-3 * Math.Abs(bound);
    }

    /// <summary>A verdict reached elsewhere.</summary>
    public Finding Says(Verdict verdict, string where, double? measured, double? limit, string cure)
        => new(Name, verdict, where, Number(measured), Number(limit), Unit, Source, Mark, cure);

    /// <summary>A note without a number.</summary>
    public Finding Note(Verdict verdict, string where, string cure) => Says(verdict, where, null, null, cure);

    // JSON has no word for endless; a gap to nothing is no number.
    private static double? Number(double? value) => value is { } v && double.IsFinite(v) ? v : null;
}
