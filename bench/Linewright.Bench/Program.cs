using BenchmarkDotNet.Running;

BenchmarkSwitcher.FromAssembly(typeof(Linewright.Bench.MeshingBenchmarks).Assembly).Run(args);
return 0;
