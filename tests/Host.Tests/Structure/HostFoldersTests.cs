using System.Reflection;
using FarmPortfolio.Host.Accounts;
using FarmPortfolio.Host.Storage;
using NetArchTest.Rules;

namespace FarmPortfolio.Host.Tests.Structure;

/// <summary>In the host requests flow from the API to studies and loading and on to storage; SQL stands in storage alone, and every store asks who looks.</summary>
public class HostFoldersTests
{
    private const string Root = "FarmPortfolio.Host";

    [Theory]
    [InlineData("Storage", "Api", "Studies", "Loading", "Demo")]
    [InlineData("Accounts", "Api", "Studies", "Loading", "Demo", "Storage", "Serving")]
    [InlineData("Loading", "Api", "Demo")]
    [InlineData("Studies", "Api", "Demo")]
    [InlineData("Serving", "Api", "Studies", "Loading", "Demo", "Storage")]
    public void A_folder_does_not_see_what_lies_before_it(string folder, params string[] hidden)
    {
        var result = Types.InAssembly(typeof(CoopStore).Assembly).That().ResideInNamespace($"{Root}.{folder}").ShouldNot().HaveDependencyOnAny([.. hidden.Select(h => $"{Root}.{h}")]).GetResult();
        Assert.True(result.IsSuccessful, $"{folder} sees {string.Join(" or ", hidden)}: {string.Join(", ", result.FailingTypeNames ?? [])}");
    }

    [Fact]
    public void Only_storage_speaks_to_the_database()
    {
        string[] database = ["Dapper", "Microsoft.Data.Sqlite", "System.Data"];
        var others = Types.InAssembly(typeof(CoopStore).Assembly).That().DoNotResideInNamespace($"{Root}.Storage").ShouldNot().HaveDependencyOnAny(database).GetResult();
        Assert.True(others.IsSuccessful, string.Join(", ", others.FailingTypeNames ?? []));
        Assert.False(Types.InAssembly(typeof(CoopStore).Assembly).That().ResideInNamespace($"{Root}.Storage").ShouldNot().HaveDependencyOnAny(database).GetResult().IsSuccessful);
    }

    [Fact]
    public void Sql_is_written_in_storage_alone()
    {
        string[] words = ["SELECT ", "INSERT INTO ", "UPDATE ", "DELETE FROM ", "PRAGMA "];
        var files = Repository.Files("*.cs", "server").Where(f => words.Any(w => File.ReadAllText(f).Contains(w, StringComparison.Ordinal))).Select(Repository.Name).ToList();
        Assert.NotEmpty(files);
        Assert.All(files, f => Assert.StartsWith("server/Host/Storage/", f, StringComparison.Ordinal));
    }

    [Fact]
    public void Every_public_store_method_takes_the_viewer_first()
    {
        var stores = typeof(CoopStore).Assembly.GetTypes().Where(t => t.Namespace?.StartsWith($"{Root}.Storage", StringComparison.Ordinal) == true && t.Name.EndsWith("Store", StringComparison.Ordinal));
        var methods = stores.SelectMany(t => t.GetMethods(BindingFlags.Public | BindingFlags.Instance | BindingFlags.Static | BindingFlags.DeclaredOnly)).ToList();
        Assert.True(methods.Count > 10);
        Assert.All(methods, m => Assert.Equal(typeof(Viewer), m.GetParameters()[0].ParameterType));
    }

    [Fact]
    public void The_program_reads_as_a_table_of_contents() => Assert.InRange(File.ReadAllLines(Repository.At("server", "Host", "Program.cs")).Length, 10, 70);
}
