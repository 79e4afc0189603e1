using System.Globalization;
using BenchmarkDotNet.Running;

if (args is ["rays"])
{
    Linewright.Bench.RayRatios.Run();
    return 0;
}

if (args is ["ten", var engine, var samples, .. var targets])
{
    static double Number(string text) => double.Parse(text, CultureInfo.InvariantCulture);
    Linewright.Bench.TenDiamonds.Run(engine, (int)Number(samples), [.. targets.Select(Number)]);
    return 0;
}

BenchmarkSwitcher.FromAssembly(typeof(Linewright.Bench.MeshingBenchmarks).Assembly).Run(args);
return 0;
