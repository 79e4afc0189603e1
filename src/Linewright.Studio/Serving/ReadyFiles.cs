using System.Collections.Concurrent;
using System.Security.Cryptography;

namespace Linewright.Studio.Serving;

/// <summary>Archives that are ready to be fetched, once each; the oldest go when there are too many.</summary>
internal sealed class ReadyFiles
{
    private const int Most = 3;

    private readonly ConcurrentQueue<string> order = new();
    private readonly ConcurrentDictionary<string, (string Name, byte[] Bytes)> ready = new(StringComparer.Ordinal);

    /// <summary>Keeps an archive and returns the key to fetch it with, which cannot be guessed.</summary>
    public string Keep(string name, byte[] bytes)
    {
        var key = RandomNumberGenerator.GetHexString(32, lowercase: true);
        ready[key] = (name, bytes);
        order.Enqueue(key);
        while (order.Count > Most && order.TryDequeue(out var oldest))
        {
            ready.TryRemove(oldest, out _);
        }

        return key;
    }

    /// <summary>Hands an archive out, null where there is none under the key.</summary>
    public (string Name, byte[] Bytes)? Take(string key) => ready.TryRemove(key, out var file) ? file : null;
}
