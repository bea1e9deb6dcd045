using System.Reflection;

namespace FarmPortfolio.Host.Tests;

/// <summary>The folder of the repository, as the build saw it.</summary>
internal static class Repository
{
    private static readonly string[] Made = ["bin", "obj", "node_modules", "dist", "generated", "TestResults"];

    public static string Root { get; } = Path.GetFullPath(typeof(Repository).Assembly.GetCustomAttributes<AssemblyMetadataAttribute>().First(a => a.Key == "Repository").Value!);

    public static string At(params string[] path) => Path.Combine([Root, .. path]);

    public static string Text(params string[] path) => File.ReadAllText(At(path));

    /// <summary>Written files of a kind beneath a folder; what a build makes is left out.</summary>
    public static IReadOnlyList<string> Files(string pattern, params string[] under) =>
        [.. Directory.EnumerateFiles(At(under), pattern, SearchOption.AllDirectories)
            .Where(f => !Path.GetRelativePath(Root, f).Split(Path.DirectorySeparatorChar).Any(Made.Contains)).Order(StringComparer.Ordinal)];

    public static string Name(string file) => Path.GetRelativePath(Root, file).Replace('\\', '/');
}
