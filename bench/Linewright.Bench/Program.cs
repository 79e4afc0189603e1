using System.Globalization;
using BenchmarkDotNet.Running;

if (args is ["rays"])
{
    Linewright.Bench.RayRatios.Run();
    return 0;
}

if (args is ["ten", var engine, var truth, .. var targets])
{
    Linewright.Bench.TenDiamonds.Run(engine, truth, [.. targets.Select(target => double.Parse(target, CultureInfo.InvariantCulture))]);
    return 0;
}

BenchmarkSwitcher.FromAssembly(typeof(Linewright.Bench.MeshingBenchmarks).Assembly).Run(args);
return 0;
