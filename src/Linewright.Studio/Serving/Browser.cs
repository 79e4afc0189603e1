using System.ComponentModel;
using System.Diagnostics;

namespace Linewright.Studio.Serving;

/// <summary>Opens an address in the browser of whoever sits at this machine; does nothing where nobody does.</summary>
internal static class Browser
{
    public static void Open(string address)
    {
        var start = OperatingSystem.IsWindows() ? new ProcessStartInfo(address) { UseShellExecute = true }
            : OperatingSystem.IsMacOS() ? new ProcessStartInfo("open", [address])
            : HasDesktop() ? new ProcessStartInfo("xdg-open", [address])
            : null;
        if (start is null)
        {
            return;
        }

        try
        {
            using var opened = Process.Start(start);
        }
        catch (Exception slip) when (slip is Win32Exception or InvalidOperationException)
        {
            return; // the address is printed; that is enough
        }
    }

    private static bool HasDesktop()
        => Environment.GetEnvironmentVariable("DISPLAY") is { Length: > 0 } || Environment.GetEnvironmentVariable("WAYLAND_DISPLAY") is { Length: > 0 };
}
