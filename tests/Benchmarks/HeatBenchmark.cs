using FarmPortfolio.Engine.Farms;
using FarmPortfolio.Engine.HeatDemand;
using FarmPortfolio.Engine.Retrofits;
using FarmPortfolio.Engine.Weather;

namespace FarmPortfolio.Benchmarks;

/// <summary>The hourly balance against a plain loop that does only K (set - outside) - sun, without rules, purge, kept sun or cap.</summary>
internal static class HeatBenchmark
{
    public static void Run()
    {
        var station = new WeatherStationFacts { LatitudeDeg = 44, LongitudeDeg = -73, ElevationM = 100 };
        var year = WeatherYears.FromDaily(station, 2015, [.. Enumerable.Range(0, 366).SelectMany(d => new[] { 2 + 14 * Math.Cos(0.0172 * (d - 20)), 12 + 14 * Math.Cos(0.0172 * (d - 20)) })]);
        var facts = new HouseFacts { FarmId = "f", DrawKey = 1, Shape = HouseShape.Hoop, WidthM = 9, LengthM = 29, HeatingPeriods = [new(new(7, 1), new(6, 30), 15, 18)] };
        var (house, _) = HouseModels.Of(facts, Catalogue.BuiltIn, new(), 2026);
        var (option, _) = OptionModels.Of(house!, new("foam", ["foam"]));
        var demand = new double[12];
        var (k, sun) = (option!.TotalWPerK(0), option.SunM2);
        var sink = 0.0;
        var rate = Paired.Rate(year.Hours, () =>
        {
            var sum = 0.0;
            for (var h = 0; h < year.Hours; h++)
            {
                sum += Math.Max(0, k * (15 - year.TempC[h]) - sun * year.RadiationWPerM2[h]);
            }

            sink += sum;
        }, () => HeatBalance.Demand(option, year, 0, demand));
        Console.WriteLine(FormattableString.Invariant($"house-option-hours a second: plain loop {rate.Reference:0.0e0}, hourly balance {rate.Measured:0.0e0} (sum {sink:0.0e0})"));
        Console.WriteLine(FormattableString.Invariant($"RATIO heat-plain {rate.Measured / rate.Reference:0.000}"));
    }
}
