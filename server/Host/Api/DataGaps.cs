using FarmPortfolio.Engine.Farms;
using FarmPortfolio.Engine.HeatDemand;
using FarmPortfolio.Engine.Retrofits;
using FarmPortfolio.Engine.Studies;
using FarmPortfolio.Engine.Units;
using FarmPortfolio.Engine.Weather;
using FarmPortfolio.Host.Storage.Items;
using FarmPortfolio.Host.Studies;
using GraphQL;

namespace FarmPortfolio.Host.Api;

/// <summary>Something the data lacks, and what it is worth to know it.</summary>
/// <param name="Kind">record, default, station, quote.</param>
/// <param name="Where">Farm, house or station.</param>
/// <param name="What">What is missing.</param>
/// <param name="HouseId">A house it concerns; null = none.</param>
/// <param name="WorthUsd">How far the season's fuel cost swings for want of it, from one in ten low to one in ten high, US dollars; null = not reckoned.</param>
[Name("DataGap")]
public sealed record DataGapView(string Kind, string Where, string What, [property: Id] string? HouseId, double? WorthUsd);

/// <summary>What the data lacks.</summary>
public sealed partial class CoopView
{
    /// <summary>Houses without a record, defaults taken, gaps in the weather, quotes that have run out; what is worth most first, so many of them.</summary>
    public IEnumerable<DataGapView> DataGaps([FromServices] TimeProvider clock, [FromServices] PageShelf shelf, int first = 20)
    {
        var today = DateOnly.FromDateTime(clock.GetUtcNow().UtcDateTime);
        return Gaps(shelf, today).Take(Math.Clamp(first, 1, MostAPage));
    }

    /// <summary>Number of all that the data lacks.</summary>
    public int DataGapTotal([FromServices] TimeProvider clock, [FromServices] PageShelf shelf) => Gaps(shelf, DateOnly.FromDateTime(clock.GetUtcNow().UtcDateTime)).Count;

    private List<DataGapView> Gaps(PageShelf shelf, DateOnly today) => shelf.Of($"gaps {register.Coop.Id} {register.LastSeq} {register.Newest?.Id} {today:o}", () => Weighed(today))!;

    private List<DataGapView> Weighed(DateOnly today)
    {
        var models = register.Houses.Values.Select(h => (House: h, register.Model(h).Model, Year: register.Middling(h.Facts))).Where(m => m.Model is not null && m.Year is not null)
            .Select(m => (m.House, Model: m.Model!, Year: m.Year!)).ToList();
        var heat = models.AsParallel().Select(m => (m.House.Id, Kwh: HeatKwh(m.Model, m.Year))).ToDictionary(m => m.Id, m => m.Kwh);
        var price = PaidUsdPerKwh(models.SelectMany(m => FuelShare.Of(m.Model).Select(s => (s.Fuel, s.FuelKwh(heat[m.House.Id])))));
        return [.. NoRecord(models, heat, price).Concat(Defaults(models, price)).Concat(Stations()).Concat(Normals()).Concat(OldPrices(models)).Concat(Quotes(today))
            .OrderByDescending(g => g.WorthUsd ?? -1).ThenBy(g => g.Where, StringComparer.Ordinal).ThenBy(g => g.What, StringComparer.Ordinal)];
    }

    private IEnumerable<DataGapView> NoRecord(List<(Item<HouseFacts> House, HouseModel Model, WeatherYear Year)> models, Dictionary<string, double> heat, Dictionary<Engine.FuelKind, double> price) => models
        .Where(m => !m.House.Facts.Supplies.Any(s => register.Records.Values.Any(r => r.Facts.SupplyGroupId == s.SupplyGroupId && r.Facts.Entries.Count > 0)))
        .GroupBy(m => m.House.Facts.FarmId).Select(g =>
        {
            var spread = Math.Exp(NormalEnds.OneInTen * register.Catalogue.Default("gradeCSd")) - Math.Exp(-NormalEnds.OneInTen * register.Catalogue.Default("gradeCSd"));
            return new DataGapView("record", $"{FarmName(g.Key)}, {Count(g.Count(), "house")}", "no fuel record: bills of two winters", g.First().House.Id, g.Sum(m => FuelShare.CostUsd(m.Model, heat[m.House.Id], price)) * spread);
        });

    private IEnumerable<DataGapView> Defaults(List<(Item<HouseFacts> House, HouseModel Model, WeatherYear Year)> models, Dictionary<Engine.FuelKind, double> price) => models
        .SelectMany(m => m.Model.DefaultsUsed.DistinctBy(d => (d.Field, d.Title, d.Value)).Select(d => (m.House, m.Model, m.Year, Default: d))).GroupBy(x => (x.Default.Field, Title: x.Default.Title.Split(':')[0])).Select(g =>
        {
            var known = g.ToList().AsParallel().AsOrdered().Select(x => Swing(x.House, x.Model, x.Year, x.Default, price)).OfType<double>().ToList();
            return new DataGapView("default", Count(g.Select(x => x.House.Id).Distinct().Count(), "house"), $"taken for granted: {g.Key.Title}", g.First().House.Id, known.Count == 0 ? null : known.Sum());
        });

    private IEnumerable<DataGapView> Normals() => register.Stations.Values.Where(s => s.Facts.IsNormalsOnly()).Select(s =>
        new DataGapView("station", s.Remarks.Name ?? "a station", NormalsMark.Gap, register.Houses.Values.FirstOrDefault(h => register.Farms.TryGetValue(h.Facts.FarmId, out var f) && f.Facts.WeatherStationId == s.Id)?.Id, null));

    private IEnumerable<DataGapView> Stations() => register.Stations.Values.Select(s => (Station: s, Gaps: s.Facts.Seasons.Where(x => x.MissingDays > 0).ToList())).Where(s => s.Gaps.Count > 0).Select(s =>
    {
        var left = s.Gaps.Count(x => x.MissingDays > WeatherYears.LongestFilledDays);
        return new DataGapView("station", s.Station.Remarks.Name ?? "a station",
            $"{s.Gaps.Sum(x => x.MissingDays)} days missing in {Count(s.Gaps.Count, "season")}{(left > 0 ? $"; {Count(left, "season")} left out" : ", filled between neighbours")}", null, null);
    });

    /// <summary>Records that end a year or more before the first season, of fuels that somebody burns.</summary>
    private IEnumerable<DataGapView> OldPrices(List<(Item<HouseFacts> House, HouseModel Model, WeatherYear Year)> models) => register.PricesInUse
        .Where(p => models.Any(m => FuelShare.Of(m.Model).Any(s => s.Fuel == p.Key && s.Share > 0)) && register.Prices.ContainsKey(p.Value)).Select(p => register.Prices[p.Value])
        .Select(s => (Series: s, EndsOn: s.Facts.FirstMonthOn.AddMonths(s.Facts.UsdPerUnit.Count - 1)))
        .Select(s => (s.Series, s.EndsOn, Months: 12 * (register.SetFacts.FirstSeason - s.EndsOn.Year) + 7 - s.EndsOn.Month)).Where(s => s.Months >= 12)
        .Select(s => new DataGapView("price", s.Series.Remarks.Name ?? "a price record", $"ends in {s.EndsOn:yyyy-MM}, {s.Months} months before the first season: a newer record narrows every price", null, null));

    private IEnumerable<DataGapView> Quotes(DateOnly today) => register.Quotes.Values.Where(q => q.Facts.ValidUntilOn < today)
        .Select(q => new DataGapView("quote", FarmName(q.Facts.FarmId), $"quote of {q.Facts.QuotedOn:yyyy-MM-dd} ran out on {q.Facts.ValidUntilOn:yyyy-MM-dd}", q.Facts.Lines.Count > 0 ? q.Facts.Lines[0].HouseId : null, null));

    /// <summary>Fuel cost of a middling season between the ends of a default's range, US dollars; null where it has no range.</summary>
    private double? Swing(Item<HouseFacts> house, HouseModel model, WeatherYear year, DefaultUsed taken, Dictionary<Engine.FuelKind, double> price)
    {
        double? At(HouseFacts facts) => HouseModels.Of(facts, register.Catalogue, new(model.CarryOver, model.PurgeVolumesPerDay, register.SetFacts.LossLevel), register.SetFacts.FirstSeason, register.Fuel(facts)).Model is { } m ? FuelShare.CostUsd(model, HeatKwh(m, year), price) : null;
        double? Between(HouseFacts low, HouseFacts high) => At(low) is { } a && At(high) is { } b ? Math.Abs(b - a) : null;
        var f = house.Facts;
        switch (taken.Field)
        {
            case "airChangesPerHour":
                var spread = Math.Exp(NormalEnds.OneInTen * register.Catalogue.Default("airChangesSdLn"));
                return Between(f with { AirChangesPerHour = model.AirChangesPerHour / spread }, f with { AirChangesPerHour = model.AirChangesPerHour * spread });
            case "heatingPeriods":
                return Between(f with { HeatingPeriods = [.. model.Periods.Select(p => p with { NightC = p.NightC - 2.8 })] }, f with { HeatingPeriods = [.. model.Periods.Select(p => p with { NightC = p.NightC + 2.8, DayC = Math.Max(p.DayC, p.NightC + 2.8) })] });
            case "surfaces":
                return f.Surfaces.Any(s => s.Part == SurfacePart.EndWalls) ? null : Between(f with { Surfaces = [.. f.Surfaces, new(SurfacePart.EndWalls, "twinwall")] }, f with { Surfaces = [.. f.Surfaces, new(SurfacePart.EndWalls, "singlefilm")] });
            case "seasonalEfficiency" or "heaters":
                var heat = HeatKwh(model, year);
                var parts = FuelShare.Of(model).Where(p => p.Efficiency == taken.Value).ToList();
                return FuelShare.CostUsd(parts.Select(p => p with { Efficiency = Math.Max(0.4, p.Efficiency - 0.06) }), heat, price)
                    - FuelShare.CostUsd(parts.Select(p => p with { Efficiency = Math.Min(p.Efficiency > 1 ? 9 : 0.99, p.Efficiency + 0.06) }), heat, price);
            default:
                return null;
        }
    }

    private static double HeatKwh(HouseModel model, WeatherYear year) => HeatBalance.Season(OptionModels.AsItStands(model), year).TotalKwh;

    /// <summary>What the newest study pays for fuel, by kind: its first season's middle cost over the fuel of the houses on it.</summary>
    private Dictionary<Engine.FuelKind, double> PaidUsdPerKwh(IEnumerable<(Engine.FuelKind Fuel, double Kwh)> burned)
    {
        var kwh = burned.GroupBy(b => b.Fuel).ToDictionary(g => g.Key, g => g.Sum(b => b.Kwh));
        return (register.NewestResult?.CostByFuel ?? []).Where(c => kwh.GetValueOrDefault(c.Fuel) > 0).ToDictionary(c => c.Fuel, c => c.FirstSeasonUsd.P50 / kwh[c.Fuel]);
    }

    private string FarmName(string id) => register.Farms.TryGetValue(id, out var f) ? f.Remarks.Name ?? "a farm" : "a farm";

    private static string Count(int n, string what) => $"{n} {what}{(n == 1 ? string.Empty : "s")}";
}
