using FarmPortfolio.Engine;
using FarmPortfolio.Engine.Fuel;
using FarmPortfolio.Engine.Scenarios;
using FarmPortfolio.Engine.Weather;
using FarmPortfolio.Host.Storage.Items;
using GraphQL;

namespace FarmPortfolio.Host.Api;

/// <summary>Severity of a recorded season.</summary>
[Name("SeasonSeverity")]
public sealed record SeverityView(int Season, string Name, double DegreeDaysK, double AgainstMiddlePct, double ColdestC, int MissingDays);

/// <summary>A place with a weather record.</summary>
[Name("WeatherStation")]
public sealed partial class StationView(Register register, Item<WeatherStationFacts> item)
{
    /// <summary>Identifier.</summary>
    [Id] public string Id => item.Id;

    /// <summary>Name.</summary>
    public string Name => item.Remarks.Name ?? "unnamed";

    /// <summary>Note.</summary>
    public string? Note => item.Remarks.Note;

    /// <summary>Latitude, degrees north.</summary>
    public double LatitudeDeg => item.Facts.LatitudeDeg;

    /// <summary>Height, metres.</summary>
    public double ElevationM => item.Facts.ElevationM;

    /// <summary>Recorded seasons against the middle one, degree days below a base.</summary>
    public IEnumerable<SeverityView> Severity(double baseC = 15.56)
    {
        var years = register.Winters(item.Id)?.Years ?? new Dictionary<int, WeatherYear>();
        var all = years.Values.Select(y => y.DegreeDaysK(baseC)).Order().ToList();
        var middle = all.Count > 0 ? all[all.Count / 2] : 1;
        return item.Facts.Seasons.Where(s => years.ContainsKey(s.Season)).OrderBy(s => s.Season).Select(s =>
            new SeverityView(s.Season, SeasonCalendar.Name(s.Season), years[s.Season].DegreeDaysK(baseC), 100 * (years[s.Season].DegreeDaysK(baseC) / middle - 1), years[s.Season].TempC.Min(), s.MissingDays));
    }
}

/// <summary>A month's price.</summary>
[Name("PricePoint")]
public sealed record PricePointView(string Month, double? UsdPerUnit);

/// <summary>Prices to come, delivered.</summary>
[Name("PriceFan")]
public sealed record PriceFanView(string Unit, IEnumerable<string> Months, IEnumerable<double> P10, IEnumerable<double> P25, IEnumerable<double> P50, IEnumerable<double> P75, IEnumerable<double> P90, string Words);

/// <summary>A monthly price record.</summary>
[Name("PriceSeries")]
public sealed partial class PriceSeriesView(Register register, Item<PriceSeriesFacts> item)
{
    /// <summary>Identifier.</summary>
    [Id] public string Id => item.Id;

    /// <summary>Name.</summary>
    public string Name => item.Remarks.Name ?? "unnamed";

    /// <summary>Fuel.</summary>
    public FuelKind Fuel => item.Facts.Fuel;

    /// <summary>Whether the futures roll on from it.</summary>
    public bool InUse => register.PricesInUse.GetValueOrDefault(Fuel) == item.Id;

    /// <summary>Unit.</summary>
    public string Unit => item.Facts.Unit;

    /// <summary>Source.</summary>
    public string? Source => item.Facts.Source;

    /// <summary>Last month.</summary>
    public string LastMonth => item.Facts.FirstMonthOn.AddMonths(item.Facts.UsdPerUnit.Count - 1).ToString("yyyy-MM", System.Globalization.CultureInfo.InvariantCulture);

    /// <summary>The record.</summary>
    public IEnumerable<PricePointView> Months => item.Facts.UsdPerUnit.Select((v, i) => new PricePointView(item.Facts.FirstMonthOn.AddMonths(i).ToString("yyyy-MM", System.Globalization.CultureInfo.InvariantCulture), v));

    /// <summary>What the record says and what it cannot, in plain sentences.</summary>
    public IEnumerable<PriceFindingView> Findings => PriceFindingView.Of(item.Facts);
}

/// <summary>One thing that a price record says or cannot say.</summary>
[Name("PriceFinding")]
public sealed record PriceFindingView(string Code, string Words)
{
    /// <summary>Findings of a series; where it cannot be used, why not.</summary>
    internal static IReadOnlyList<PriceFindingView> Of(PriceSeriesFacts facts)
    {
        var (record, faults) = PriceRecord.Of(facts);
        return record is null
            ? [.. faults.Select(f => new PriceFindingView(f.Code, $"{f.Message} {f.Remedy}"))]
            : [.. PriceFindings.Of(PriceDiagnostics.Of(record, facts.Class)).Select(f => new PriceFindingView(f.Code, f.Words))];
    }
}

/// <summary>The assumptions in use.</summary>
[Name("ScenarioSet")]
public sealed partial class ScenarioSetView(Item<ScenarioSetFacts> item)
{
    /// <summary>Identifier.</summary>
    [Id] public string Id => item.Id;

    /// <summary>Revision.</summary>
    public int Revision => (int)item.Revision;

    /// <summary>Name.</summary>
    public string Name => item.Remarks.Name ?? "unnamed";

    /// <summary>Year of the first season's July.</summary>
    public int FirstSeason => item.Facts.FirstSeason;

    /// <summary>Seasons.</summary>
    public int SeasonCount => item.Facts.SeasonCount;

    /// <summary>Random seed.</summary>
    public string Seed => item.Facts.Seed.ToString(System.Globalization.CultureInfo.InvariantCulture);

    /// <summary>Discount rate.</summary>
    public double DiscountRate => item.Facts.DiscountRate;

    /// <summary>Growth of upkeep and wages.</summary>
    public double UpkeepGrowth => item.Facts.UpkeepGrowth;

    /// <summary>Wage, $/h.</summary>
    public double WageUsdPerHour => item.Facts.WageUsdPerHour;

    /// <summary>Electricity, $/kWh.</summary>
    public double ElectricityUsdPerKwh => item.Facts.ElectricityUsdPerKwh;

    /// <summary>Offset, K.</summary>
    public double OffsetK => item.Facts.OffsetK;

    /// <summary>Trend, K a year.</summary>
    public double OffsetTrendKPerYear => item.Facts.OffsetTrendKPerYear;

    /// <summary>Level of U before bills.</summary>
    public double LossLevel => item.Facts.LossLevel;

    /// <summary>Whether levels are means or medians.</summary>
    public LevelMeaning LevelMeaning => item.Facts.LevelMeaning;
}
