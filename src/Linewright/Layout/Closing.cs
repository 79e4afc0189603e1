namespace Linewright.Layout;

/// <summary>The one equation that ties count, pitch and clasp together, for a length or for a wrist.</summary>
internal abstract record Closing
{
    /// <summary>What was asked for, mm: the measure that a refusal speaks in.</summary>
    public abstract double AskedMm { get; }

    /// <summary>What that measure is called.</summary>
    public abstract string Measure { get; }

    /// <summary>The clasp that closes, mm; may be below 0 or infinite.</summary>
    public abstract double Clasp(int count, double pitch);

    /// <summary>The pitch that closes, mm; may be infinite.</summary>
    public abstract double Pitch(int count, double clasp);

    /// <summary>The measure that a line reaches, mm.</summary>
    public abstract double Reach(int count, double pitch, double clasp);

    /// <summary>Closes to a laid-flat length: L = N p + Lc.</summary>
    public sealed record Flat(double LaidFlatMm) : Closing
    {
        public override double AskedMm => LaidFlatMm;

        public override string Measure => "laid flat";

        public override double Clasp(int count, double pitch) => LaidFlatMm - count * pitch;

        public override double Pitch(int count, double clasp) => (LaidFlatMm - clasp) / count;

        public override double Reach(int count, double pitch, double clasp) => count * pitch + clasp;
    }

    /// <summary>Closes to an inside circumference on a round wrist.</summary>
    public sealed record Wrist(double InsideMm, double HingeHeightMm) : Closing
    {
        private double AxisRadius => InsideMm / (2 * Math.PI) + HingeHeightMm;

        public override double AskedMm => InsideMm;

        public override string Measure => "inside";

        public override double Clasp(int count, double pitch) => RoundFit.ClaspFor(count, pitch, AxisRadius);

        public override double Pitch(int count, double clasp) => RoundFit.PitchFor(count, clasp, AxisRadius);

        public override double Reach(int count, double pitch, double clasp) => RoundFit.Solve(count, pitch, clasp, HingeHeightMm).InsideCircumferenceMm;
    }
}
