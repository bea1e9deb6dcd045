using System.Globalization;
using FarmPortfolio.Engine.Farms;
using FarmPortfolio.Engine.HeatDemand;
using FarmPortfolio.Engine.Retrofits;
using FarmPortfolio.Engine.Scenarios;
using FarmPortfolio.Engine.Units;
using FarmPortfolio.Engine.Weather;
using static System.Math;

namespace FarmPortfolio.Engine.Studies;

/// <summary>An input of a house moved down and up, each as a whole portfolio to run.</summary>
/// <param name="Field">Word for the input.</param>
/// <param name="Title">Plain name.</param>
/// <param name="LowWords">The lower end with its unit.</param>
/// <param name="Low">With the input at the lower end.</param>
/// <param name="HighWords">The upper end with its unit.</param>
/// <param name="High">With the input at the upper end.</param>
internal sealed record SensitivityMove(string Field, string Title, string LowWords, Portfolio Low, string HighWords, Portfolio High);

/// <summary>The one-in-ten ends of the inputs that can move a payback.</summary>
internal static class SensitivityInputs
{
    /// <summary>Standard deviations to one in ten on one side.</summary>
    private const double OneInTen = AirLeaks.OneInTen;

    /// <summary>Spread of what a dial says against what the house has, K: 2 F; common practice, no source.</summary>
    private const double SetPointSdK = 2 * Us.DegreeK;

    /// <summary>Spread of a wage that nobody told, share; common practice, no source.</summary>
    private const double WageSd = 0.2;

    internal static IReadOnlyList<SensitivityMove> Of(Portfolio p, string houseId, OptionFacts option, OptionResult known)
    {
        var moves = new List<SensitivityMove>();
        var house = p.Houses[houseId];
        var farm = p.Farms[house.FarmId];
        void Add(string field, string title, double low, double high, Func<double, string> words, Func<double, Portfolio> with)
        {
            if (high > low)
            {
                moves.Add(new(field, title, words(low), with(low), words(high), with(high)));
            }
        }

        var (cheap, dear) = PriceEnds(p, houseId, known.Fuel);
        Portfolio Priced(FuelKind? fuel, double f) => p with { Set = p.Set with { Shapes = [.. p.Set.Shapes, new(fuel, 0, [.. Enumerable.Repeat(f, p.Set.SeasonCount)])] } };
        Add("price", $"Price of {Name(known.Fuel)}, all seasons", cheap, dear, Percent, f => Priced(known.NewFuel is null ? null : known.Fuel, f));
        if (known.NewFuel is { } other && other != known.Fuel)
        {
            var (low, high) = PriceEnds(p, houseId, other);
            Add("newPrice", $"Price of {Name(other)}, all seasons", low, high, Percent, f => Priced(other, f));
        }

        var swing = OneInTen * WinterSd(p, farm);
        Add("winters", "Winters of the horizon", -swing, swing, Warmer, k => p with { Set = p.Set with { OffsetK = p.Set.OffsetK - k } });
        Add("saving", "Share of the reckoned saving that comes true", known.RealisedMean - OneInTen * FactorSd(p, option), known.RealisedMean + OneInTen * FactorSd(p, option),
            f => f.ToString("0.00", CultureInfo.InvariantCulture), f => WithFactor(p, option, Max(0, f) / known.RealisedMean));
        if (known.OutlayUsd > 0)
        {
            var spread = Exp(OneInTen * known.Costs.SpreadSd);
            Add("outlay", "Outlay", known.Costs.OutlayUsd / spread, known.Costs.OutlayUsd * spread, Dollars, usd => With(p, houseId, option, o => o with { OutlayCents = (long)Round(usd * 100) }));
        }

        var air = HouseAir(p, house);
        var leaky = Exp(OneInTen * p.Catalogue.Default("airChangesSdLn"));
        Add("leaks", "Air changes an hour", air / leaky, air * leaky, n => n.ToString("0.0", CultureInfo.InvariantCulture), n => WithHouse(p, houseId, house with { AirChangesPerHour = n }));
        var level = Exp(OneInTen * p.Catalogue.Default(known.Grade == DataGrade.C ? "gradeCSd" : "gradeBSd"));
        Add("level", known.Grade == DataGrade.C ? "Heat of the house, no bills" : "Heat of the house, bills known", 1 / level, level, Percent, f => p with { Set = p.Set with { LossLevel = p.Set.LossLevel * f } });
        Add("setPoint", "Night set point", -OneInTen * SetPointSdK, OneInTen * SetPointSdK, k => $"{k * 1.8:+0.0;−0.0} F", k => WithHouse(p, houseId, house with { HeatingPeriods = Shifted(p, house, k) }));
        Watching(p, houseId, option, farm, Add);
        return moves;
    }

    private static void Watching(Portfolio p, string houseId, OptionFacts option, FarmFacts farm, Action<string, string, double, double, Func<double, string>, Func<double, Portfolio>> add)
    {
        var hours = option.Parts.Select(c => p.Catalogue.Find(CatalogueKind.Retrofit, c)?.Values.GetValueOrDefault("watchingHours")).OfType<CatalogueValue>().ToList();
        var now = option.Overrides?.WatchingHoursPerWeek ?? hours.Sum(h => h.Value);
        if (now <= 0)
        {
            return;
        }

        var (low, high) = option.Overrides?.WatchingHoursPerWeek is { } own ? (own / 2, own * 2) : (hours.Sum(h => h.Low ?? h.Value / 2), hours.Sum(h => h.High ?? h.Value * 2));
        add("watching", "Watching, hours a week", low, high, h => h.ToString("0.0", CultureInfo.InvariantCulture), h => With(p, houseId, option, o => o with { WatchingHoursPerWeek = h }));
        var wage = farm.WageUsdPerHour ?? p.Set.WageUsdPerHour;
        var spread = Exp(OneInTen * WageSd);
        add("wage", "Wage for watching, an hour", wage / spread, wage * spread, Dollars, w => p with { Farms = p.Farms.ToDictionary(f => f.Key, f => f.Value with { WageUsdPerHour = w }) });
    }

    /// <summary>Mean price of the horizon over its middle, at one in ten lower and higher, in the futures themselves.</summary>
    private static (double Low, double High) PriceEnds(Portfolio p, string houseId, FuelKind fuel)
    {
        var winters = p.Set.WinterPool;
        var years = Years(p, p.Farms[p.Houses[houseId].FarmId]);
        var (spec, _) = FuturesSpec.Of(p.Set, p.Prices, winters, [.. winters.Select(w => MonthMeans(years[w]))]);
        if (spec is null)
        {
            return (1, 1);
        }

        var futures = new Futures(spec);
        var means = new List<double>();
        for (var r = 0; r < p.Set.ReplicateCount; r++)
        {
            var block = futures.Draw(r);
            var (price, months) = (block.Price(fuel), 12 * block.Seasons);
            for (var path = 0; path < block.Paths; path++)
            {
                var sum = 0.0;
                for (var m = 0; m < months; m++)
                {
                    sum += price[path * months + m];
                }

                means.Add(sum / months);
            }
        }

        var d = Economics.Distribution.Of([.. means], p.Set.ReplicateCount);
        return (d.P10 / d.P50, d.P90 / d.P50);
    }

    /// <summary>Spread of a whole horizon's mean winter, K: single winters even out over the seasons.</summary>
    private static double WinterSd(Portfolio p, FarmFacts farm)
    {
        var years = Years(p, farm);
        var cold = p.Set.WinterPool.Where(years.ContainsKey).Select(w => MonthMeans(years[w])).Select(m => (m[4] + m[5] + m[6] + m[7] + m[8]) / 5).ToList();
        var mean = cold.Average();
        var variance = cold.Sum(c => (c - mean) * (c - mean)) / Max(1, cold.Count - 1);
        return Sqrt((variance + p.Set.OffsetSdK * p.Set.OffsetSdK) / p.Set.SeasonCount);
    }

    private static IReadOnlyDictionary<int, WeatherYear> Years(Portfolio p, FarmFacts farm) => p.Stations[farm.WeatherStationId!].Years;

    private static double[] MonthMeans(WeatherYear year)
    {
        var means = new double[12];
        for (var m = 0; m < 12; m++)
        {
            for (var h = year.MonthStart[m]; h < year.MonthStart[m + 1]; h++)
            {
                means[m] += year.TempC[h] / (year.MonthStart[m + 1] - year.MonthStart[m]);
            }
        }

        return means;
    }

    private static double FactorSd(Portfolio p, OptionFacts option) => option.Parts.Count == 0 ? 0 : option.Parts.Average(c => p.Catalogue.Value(CatalogueKind.Retrofit, c, "factorSd"));

    private static Portfolio WithFactor(Portfolio p, OptionFacts option, double times) => p with
    {
        Catalogue = p.Catalogue.With(option.Parts.Select(code => p.Catalogue.Find(CatalogueKind.Retrofit, code)).OfType<CatalogueFacts>().Select(e => e with
        {
            Values = new Dictionary<string, CatalogueValue>(e.Values) { ["factorMean"] = new((e.Values.TryGetValue("factorMean", out var v) ? v.Value : 1) * times, "1") },
        })),
    };

    private static Portfolio With(Portfolio p, string houseId, OptionFacts option, Func<OptionOverrides, OptionOverrides> change) => p with
    {
        Options = new Dictionary<string, IReadOnlyList<OptionFacts>> { [houseId] = [option with { Overrides = change(option.Overrides ?? new()) }] },
    };

    private static Portfolio WithHouse(Portfolio p, string houseId, HouseFacts house) => p with { Houses = new Dictionary<string, HouseFacts> { [houseId] = house } };

    private static double HouseAir(Portfolio p, HouseFacts house) => HouseModel(p, house)?.AirChangesPerHour ?? 0;

    private static List<HeatingPeriod> Shifted(Portfolio p, HouseFacts house, double k) => [.. (HouseModel(p, house)?.Periods ?? []).Select(x => x with { NightC = x.NightC + k, DayC = Max(x.DayC, x.NightC + k) })];

    private static HouseModel? HouseModel(Portfolio p, HouseFacts house) => HouseModels.Of(house, p.Catalogue, p.Set.Heat(), p.Set.FirstSeason).Model;

    private static string Percent(double f) => $"{100 * (f - 1):+0;−0} %";

    /// <summary>Three digits: no input is known better.</summary>
    private static string Dollars(double usd)
    {
        var step = Pow(10, Max(0, Floor(Log10(Max(usd, 1))) - 2));
        return $"${(step * Round(usd / step)).ToString("#,0", CultureInfo.InvariantCulture)}";
    }

    private static string Warmer(double k) => $"{Abs(k) * 1.8:0.0} F {(k < 0 ? "warmer" : "colder")}";

    private static string Name(FuelKind fuel) => fuel switch { FuelKind.NaturalGas => "natural gas", FuelKind.FuelOil => "No. 2 oil", FuelKind.WoodPellets => "wood pellets", _ => fuel.ToString().ToLowerInvariant() };
}
