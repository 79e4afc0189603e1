using System.Text.Json.Nodes;

namespace Linewright.Tests;

/// <summary>The packages of every project are locked, and for no system in particular.</summary>
public class PackagesTests
{
    [Fact]
    public void Every_project_has_its_packages_locked_whatever_the_system()
    {
        var projects = ((string[])["src", "tests", "bench"])
            .SelectMany(folder => Directory.EnumerateFiles(Path.Combine(Repository.Root, folder), "*.csproj", SearchOption.AllDirectories))
            .ToList();
        Assert.NotEmpty(projects);
        Assert.All(projects, project =>
        {
            var root = JsonNode.Parse(File.ReadAllText(Path.Combine(Path.GetDirectoryName(project)!, "packages.lock.json")))!;

            // A lock for one system would have a second graph, such as net10.0/linux-x64, or packages of its runtime.
            var graph = Assert.Single(root["dependencies"]!.AsObject());
            Assert.Equal("net10.0", graph.Key);
            Assert.DoesNotContain(graph.Value!.AsObject(), package => package.Key.StartsWith("runtime.", StringComparison.OrdinalIgnoreCase)
                || package.Key.Contains("ILCompiler", StringComparison.OrdinalIgnoreCase)
                || package.Key.Contains("Microsoft.NETCore.App", StringComparison.OrdinalIgnoreCase));
        });
    }
}
