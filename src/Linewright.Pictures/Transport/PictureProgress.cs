using Linewright.Pictures.Images;

namespace Linewright.Pictures.Transport;

/// <summary>How far a picture is; handed out after every pass.</summary>
/// <param name="Share">Part of the work that is done as far as one can tell, 0 to 1, never falling.</param>
/// <param name="Pass">Passes done, from 1.</param>
/// <param name="Samples">Samples taken in all.</param>
/// <param name="Noise">Relative error over the picture now; not a number after a single sample, which says nothing of it.</param>
/// <param name="SoFar">
/// Makes the picture as it is now, unfiltered; costs a copy, so call it only to show it, and only before <see cref="IProgress{T}.Report"/>
/// returns, or once the drawing has ended or been stopped.
/// </param>
public sealed record PictureProgress(double Share, int Pass, long Samples, double Noise, Func<Picture> SoFar);
