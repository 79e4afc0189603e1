namespace Linewright.Layout;

/// <summary>Whether a line could be laid around a form or along a curve.</summary>
public enum FitStatus
{
    /// <summary>It lies there.</summary>
    Fits,

    /// <summary>The line is too short to go round anything at its hinge height.</summary>
    LineTooShort,

    /// <summary>The curve ends before the line does.</summary>
    CurveTooShort,

    /// <summary>The curve bends more than the hinges turn.</summary>
    CurveTooTight,
}
