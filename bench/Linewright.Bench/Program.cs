using BenchmarkDotNet.Running;

if (args is ["rays"])
{
    Linewright.Bench.RayRatios.Run();
    return 0;
}

BenchmarkSwitcher.FromAssembly(typeof(Linewright.Bench.MeshingBenchmarks).Assembly).Run(args);
return 0;
