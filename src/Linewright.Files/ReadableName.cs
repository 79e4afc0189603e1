using System.Runtime.CompilerServices;
using System.Xml;

namespace Linewright.Files;

/// <summary>Names end up in XML and JSON and before a person's eyes, so they hold visible text only.</summary>
internal static class ReadableName
{
    /// <summary>Returns the name where it can be written and read, throws otherwise.</summary>
    /// <exception cref="ArgumentException">The name is blank, has a control character or half a surrogate pair.</exception>
    public static string Checked(string name, [CallerArgumentExpression(nameof(name))] string? parameter = null)
    {
        ArgumentException.ThrowIfNullOrWhiteSpace(name, parameter);
        for (var i = 0; i < name.Length; i++)
        {
            var isPair = i + 1 < name.Length && XmlConvert.IsXmlSurrogatePair(name[i + 1], name[i]);
            if (!isPair && (char.IsControl(name[i]) || !XmlConvert.IsXmlChar(name[i])))
            {
                throw new ArgumentException(FormattableString.Invariant($"character {(int)name[i]:X4} at place {i} is no readable text"), parameter);
            }

            i += isPair ? 1 : 0;
        }

        return name;
    }
}
