using System.Globalization;
using System.Text.Json;
using FarmPortfolio.Engine;
using FarmPortfolio.Engine.Fuel;
using FarmPortfolio.Host.Accounts;
using FarmPortfolio.Host.Storage;
using FarmPortfolio.Host.Storage.Items;

namespace FarmPortfolio.Host.Demo;

/// <summary>The public-domain price records that ship with the program, kept in the co-op "shared".</summary>
/// <param name="coops">Co-ops.</param>
/// <param name="items">Items.</param>
public sealed class StarterPrices(CoopStore coops, ItemStore items)
{
    private static readonly JsonSerializerOptions Web = new(JsonSerializerDefaults.Web);

    /// <summary>Adds the records where they are not there yet.</summary>
    public void Fill()
    {
        if (!coops.Add(Viewer.Program, "shared", "shared", isDemo: false))
        {
            return;
        }

        var folder = Path.Combine(AppContext.BaseDirectory, "Data", "prices");
        var manifest = JsonSerializer.Deserialize<List<Entry>>(File.ReadAllText(Path.Combine(folder, "manifest.json")), Web)!;
        items.Save(Viewer.Program, "shared", "starter price records", "starter prices", [.. manifest.Select(e =>
        {
            var rows = File.ReadAllLines(Path.Combine(folder, e.Code + ".csv")).Skip(1).Select(l => l.Split(',')).ToDictionary(
                c => DateOnly.ParseExact(c[0], "yyyy-MM", CultureInfo.InvariantCulture), c => double.Parse(c[1], CultureInfo.InvariantCulture));
            var (first, last) = (rows.Keys.Min(), rows.Keys.Max());
            var months = Enumerable.Range(0, 12 * (last.Year - first.Year) + last.Month - first.Month + 1).Select(i => first.AddMonths(i));
            return new ItemToSave(ItemKind.PriceSeries, "ps_" + e.Code, null, new PriceSeriesFacts
            {
                Fuel = Enum.Parse<FuelKind>(e.Fuel),
                Market = Enum.Parse<PriceMarket>(e.Market),
                Class = Enum.Parse<PriceClass>(e.Class),
                Unit = e.Unit,
                FirstMonthOn = first,
                UsdPerUnit = [.. months.Select(m => rows.TryGetValue(m, out var v) ? v : (double?)null)],
                Source = e.Source,
            }, new(e.Name));
        })]);
    }

    private sealed record Entry(string Code, string Name, string Fuel, string Market, string Class, string Unit, string Source);
}
