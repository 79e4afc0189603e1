namespace Linewright.Studio.Wire;

/// <summary>How far a picture is.</summary>
public enum PictureState
{
    /// <summary>The parts are meshed, the line is laid, the scene is lit.</summary>
    Preparing,

    /// <summary>Light is followed.</summary>
    Drawing,

    /// <summary>Finished.</summary>
    Done,

    /// <summary>Stopped before its end; what was there is kept.</summary>
    Stopped,

    /// <summary>It cannot be made.</summary>
    Failed,
}
