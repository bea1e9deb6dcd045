using FarmPortfolio.Engine;
using FarmPortfolio.Engine.Farms;
using FarmPortfolio.Engine.Retrofits;
using FarmPortfolio.Host.Storage;
using FarmPortfolio.Host.Storage.Items;

namespace FarmPortfolio.Host.Loading;

/// <summary>
/// Turns rows of a sheet of quotes into quotes that can be saved as one change. Rows join on farm and house names; a name that is nearly another's is asked about, never guessed. Rows of one farm,
/// supplier, date, last day and kind are one quote; what stands with the farm already is not added again.
/// </summary>
/// <param name="farms">Farms there are.</param>
/// <param name="houses">Houses there are.</param>
/// <param name="quotes">Quotes there are.</param>
/// <param name="ids">Source of identifiers.</param>
/// <param name="file">Name of the file, for the faults.</param>
public sealed class QuotesPlan(IEnumerable<Item<FarmFacts>> farms, IEnumerable<Item<HouseFacts>> houses, IEnumerable<Item<QuoteFacts>> quotes, Ids ids, string file)
{
    private readonly List<Fault> faults = [];
    private readonly List<ItemToSave> items = [];
    private readonly Dictionary<string, (string Id, string Name)> byName = farms.GroupBy(f => Names.Key(f.Remarks.Name ?? f.Id)).ToDictionary(g => g.Key, g => (g.First().Id, g.First().Remarks.Name ?? g.First().Id), StringComparer.Ordinal);
    private readonly ILookup<string, (string Key, string Id, string Name)> byFarm = houses.ToLookup(h => h.Facts.FarmId, h => (Names.Key(h.Remarks.Name ?? h.Id), h.Id, h.Remarks.Name ?? h.Id), StringComparer.Ordinal);
    private readonly Dictionary<(DateOnly On, string Supplier, string HouseId, string Code), int> there = Standing(quotes);

    /// <summary>What cannot stand, with the line it comes from.</summary>
    public IReadOnlyList<Fault> Faults => faults;

    /// <summary>Quotes to save, in one change.</summary>
    public IReadOnlyList<ItemToSave> Items => items;

    /// <summary>Lines of those quotes.</summary>
    public int Lines => items.Sum(i => ((QuoteFacts)i.Facts!).Lines.Count);

    /// <summary>Adds rows.</summary>
    /// <param name="rows">Rows.</param>
    public void Add(IEnumerable<QuoteRow> rows)
    {
        var sound = new List<(QuoteRow Row, string FarmId, string HouseId)>();
        foreach (var row in rows)
        {
            if (Farm(row) is { } farm && House(row, farm.Id, farm.Name) is { } house && IsNew(row, house))
            {
                sound.Add((row, farm.Id, house));
            }
        }

        foreach (var quote in sound.GroupBy(r => (r.FarmId, Supplier: Names.Key(r.Row.Supplier ?? string.Empty), r.Row.QuotedOn, r.Row.ValidUntilOn, r.Row.Firmness)))
        {
            var (first, notes) = (quote.First().Row, quote.Select(r => r.Row.Note).OfType<string>().Distinct().ToList());
            var facts = new QuoteFacts
            {
                FarmId = quote.Key.FarmId,
                QuotedOn = quote.Key.QuotedOn,
                ValidUntilOn = quote.Key.ValidUntilOn,
                Firmness = quote.Key.Firmness,
                Lines = [.. quote.SelectMany(r => r.Row.Parts.Select(p => new QuoteLine(r.HouseId, r.Row.RetrofitCode, p.Cents, p.Category, r.Row.Eligible)))],
            };
            items.Add(new(ItemKind.Quote, ids.New("q"), null, facts, new(Supplier: first.Supplier, Note: notes.Count > 0 ? string.Join("; ", notes) : null), file, first.Line));
        }
    }

    private static Dictionary<(DateOnly On, string Supplier, string HouseId, string Code), int> Standing(IEnumerable<Item<QuoteFacts>> quotes)
    {
        var standing = new Dictionary<(DateOnly, string, string, string), int>();
        foreach (var quote in quotes)
        {
            foreach (var line in quote.Facts.Lines)
            {
                standing[(quote.Facts.QuotedOn, Names.Key(quote.Remarks.Supplier ?? string.Empty), line.HouseId, line.RetrofitCode)] = 0;
            }
        }

        return standing;
    }

    private (string Id, string Name)? Farm(QuoteRow row)
    {
        var key = Names.Key(row.Farm);
        if (byName.TryGetValue(key, out var there))
        {
            return there;
        }

        var near = byName.FirstOrDefault(f => HouseWords.Near(f.Key, key)).Value.Name;
        Bad(row, near is null ? "NOT_FOUND" : "NEAR_NAME", "farm", $"There is no farm \"{WeatherCells.Short(row.Farm)}\".", near is null ? "Write its name as it stands among the farms, or bring the farm in first." : $"Write \"{near}\" if that is the farm.");
        return null;
    }

    private string? House(QuoteRow row, string farmId, string farmName)
    {
        var (key, own) = (Names.Key(row.House), byFarm[farmId].ToList());
        if (own.FirstOrDefault(h => h.Key == key) is { Id: { } id })
        {
            return id;
        }

        var near = own.FirstOrDefault(h => HouseWords.Near(h.Key, key)).Name;
        Bad(row, near is null ? "NOT_FOUND" : "NEAR_NAME", "house", $"{farmName} has no house \"{WeatherCells.Short(row.House)}\".", near is not null ? $"Write \"{near}\" if that is the house." : own.Count == 0 ? "Bring the house in first." : $"Write one of {string.Join(", ", own.Take(12).Select(h => h.Name))}{(own.Count > 12 ? " and so on" : string.Empty)}.");
        return null;
    }

    private bool IsNew(QuoteRow row, string houseId)
    {
        if (there.TryAdd((row.QuotedOn, Names.Key(row.Supplier ?? string.Empty), houseId, row.RetrofitCode), row.Line))
        {
            return true;
        }

        var line = there[(row.QuotedOn, Names.Key(row.Supplier ?? string.Empty), houseId, row.RetrofitCode)];
        Bad(row, "DOUBLED", "retrofit", $"A quote of {row.QuotedOn:yyyy-MM-dd} for this retrofit on {row.House} by the same supplier stands {(line == 0 ? "with the farm" : $"in line {line}")} already.", "Take one out, or put its money into one row; the row is left out.");
        return false;
    }

    private void Bad(QuoteRow row, string code, string field, string message, string remedy) => faults.Add(new(code, field, message, remedy, file, row.Line));
}
