using System.Globalization;
using FarmPortfolio.Engine;
using FarmPortfolio.Host.Loading;

namespace FarmPortfolio.Host.Tests.Loading;

/// <summary>A folder of files, sound and bad: each gives exactly the faults that data/files/expected.txt lists, with line, column and words.</summary>
public class FaultTableTests
{
    private static readonly string Folder = Path.Combine(AppContext.BaseDirectory, "data", "files");

    private static readonly ILookup<string, string> Expected = File.ReadAllLines(Path.Combine(Folder, "expected.txt")).Where(l => l.Length > 0).Select(l => l.Split('\t', 2)).ToLookup(l => l[0], l => l[1]);

    public static IEnumerable<TheoryDataRow<string>> Files => Directory.EnumerateFiles(Folder).Select(Path.GetFileName).OfType<string>().Where(f => f.StartsWith("weather", StringComparison.Ordinal) || f.StartsWith("prices", StringComparison.Ordinal)).Order(StringComparer.Ordinal).Select(f => new TheoryDataRow<string>(f));

    [Theory, MemberData(nameof(Files))]
    public void A_file_gives_exactly_the_faults_listed(string file)
    {
        using var stream = File.OpenRead(Path.Combine(Folder, file));
        using var text = SourceText.Open(stream, file, 1 << 20);
        var (kept, faults) = file.StartsWith("weather", StringComparison.Ordinal) ? Weather(text) : Prices(text);
        Assert.All(faults, f => Assert.NotEmpty(f.Remedy));
        Assert.All(faults, f => Assert.Equal(file, f.File));
        string[] found = [kept, .. faults.Select(f => string.Create(CultureInfo.InvariantCulture, $"{f.Code}\t{f.Line}\t{f.Column}\t{f.Message}"))];
        Assert.True(Expected[file].SequenceEqual(found), $"found:\n{string.Concat(found.Select(f => $"{file}\t{f}\n"))}expected:\n{string.Join('\n', Expected[file])}");
    }

    private static (string Kept, IReadOnlyList<Fault> Faults) Weather(SourceText text)
    {
        var loaded = WeatherFile.Read(text, new(null, -5));
        return (loaded.Value is not { } r ? "nothing" : string.Create(CultureInfo.InvariantCulture, $"{r.Layout}\t{r.Days} days\t{r.UnitWords}"), loaded.Faults);
    }

    private static (string Kept, IReadOnlyList<Fault> Faults) Prices(SourceText text)
    {
        var loaded = MonthlyPrices.Read(text);
        return (loaded.Value is not { } r ? "nothing" : string.Create(CultureInfo.InvariantCulture, $"{r.Layout}\t{r.Prices.Count(p => p is not null)} prices\t{r.FirstMonthOn:yyyy-MM}\t{r.Prices[0]:0.###}\t{r.Unit}\t{r.Fuel}"), loaded.Faults);
    }
}
