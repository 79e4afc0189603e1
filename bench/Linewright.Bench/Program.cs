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

Type[] classes =
[
    typeof(Linewright.Bench.HingeBenchmarks), typeof(Linewright.Bench.MeshingBenchmarks), typeof(Linewright.Bench.PieceBenchmarks),
    typeof(Linewright.Bench.PlanBenchmarks), typeof(Linewright.Bench.RayBenchmarks), typeof(Linewright.Bench.RayBuildBenchmarks),
];
if (!Linewright.Bench.Embree.IsHere)
{
    Console.WriteLine(Linewright.Bench.Embree.NotHere);
    classes = classes[..^2];
}

BenchmarkSwitcher.FromTypes(classes).Run(args);
return 0;
