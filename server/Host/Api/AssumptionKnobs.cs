using FarmPortfolio.Engine.Scenarios;

namespace FarmPortfolio.Host.Api;

/// <summary>One number of a set of assumptions that can be changed.</summary>
/// <param name="Field">Field.</param>
/// <param name="Title">Plain name.</param>
/// <param name="Unit">SI unit; 1 = share or multiplier.</param>
/// <param name="Low">Lowest that is taken.</param>
/// <param name="High">Highest that is taken.</param>
/// <param name="Source">Where the default comes from.</param>
/// <param name="Get">Reads it.</param>
/// <param name="Set">Sets it.</param>
internal sealed record AssumptionKnob(string Field, string Title, string Unit, double Low, double High, string Source, Func<ScenarioSetFacts, double> Get, Func<ScenarioSetFacts, double, ScenarioSetFacts> Set);

/// <summary>The numbers of a set of assumptions with their plain names, units, ranges and sources.</summary>
internal static class AssumptionKnobs
{
    private const string Practice = "common practice, no source";

    internal static IReadOnlyList<AssumptionKnob> All { get; } =
    [
        new("firstSeason", "first season, year of its July", "year", 1990, 2100, "the calendar", s => s.FirstSeason, (s, v) => s with { FirstSeason = (int)v }),
        new("seasonCount", "seasons reckoned", "seasons", 1, 30, Practice, s => s.SeasonCount, (s, v) => s with { SeasonCount = (int)v }),
        new("discountRate", "discount rate, nominal", "1/a", -0.02, 0.4, Practice, s => s.DiscountRate, (s, v) => s with { DiscountRate = v }),
        new("upkeepGrowth", "growth of wages, upkeep and consumables", "1/a", -0.1, 0.3, Practice, s => s.UpkeepGrowth, (s, v) => s with { UpkeepGrowth = v }),
        new("replacementGrowth", "growth of the cost of renewals", "1/a", -0.1, 0.3, Practice, s => s.ReplacementGrowth, (s, v) => s with { ReplacementGrowth = v }),
        new("wageUsdPerHour", "wage where the farm tells none", "$/h", 0, 500, Practice, s => s.WageUsdPerHour, (s, v) => s with { WageUsdPerHour = v }),
        new("electricityUsdPerKwh", "electricity for pumps and motors where the farm tells none", "$/kWh", 0, 5, Practice, s => s.ElectricityUsdPerKwh, (s, v) => s with { ElectricityUsdPerKwh = v }),
        new("takeBackShare", "saving taken back as a warmer house", "1", 0, 0.5, Practice, s => s.TakeBackShare, (s, v) => s with { TakeBackShare = v }),
        new("commonShare", "share of the errors of saving and outlay that all houses have in common", "1", 0, 1, Practice, s => s.CommonShare, (s, v) => s with { CommonShare = v }),
        new("carryOver", "share of a day's surplus sun kept for the night", "1", 0, 1, Practice, s => s.CarryOver, (s, v) => s with { CarryOver = v }),
        new("purgeVolumesPerDay", "volumes of air a day vented against damp", "1/d", 0, 48, Practice, s => s.PurgeVolumesPerDay, (s, v) => s with { PurgeVolumesPerDay = v }),
        new("lossLevel", "multiplier on U-values before bills", "1", 0.3, 3, "computed: film physics against the handbook's U-value", s => s.LossLevel, (s, v) => s with { LossLevel = v }),
        new("offsetK", "winters warmer than the record by", "K", -6, 6, Practice, s => s.OffsetK, (s, v) => s with { OffsetK = v }),
        new("offsetTrendKPerYear", "warming", "K/a", -0.3, 0.3, Practice, s => s.OffsetTrendKPerYear, (s, v) => s with { OffsetTrendKPerYear = v }),
        new("offsetSdK", "spread of a season's offset", "K", 0, 4, Practice, s => s.OffsetSdK, (s, v) => s with { OffsetSdK = v }),
        new("replicateCount", "replicates of the futures", "count", 2, 40, "error of computing is read from them", s => s.ReplicateCount, (s, v) => s with { ReplicateCount = (int)v }),
        new("pathCount", "futures a replicate", "count", 64, 16384, "error of computing is read from them", s => s.PathCount, (s, v) => s with { PathCount = (int)v }),
        new("evenFutures", "futures are spread evenly, by Sobol points (1), or drawn one by one (0)", "count", 0, 1, "computed: on the demo's book spread evenly, a probability's error is 1.7 times smaller", s => s.Sampling == PathSampling.Sobol ? 1 : 0, (s, v) => s with { Sampling = v >= 0.5 ? PathSampling.Sobol : PathSampling.Plain }),
        new("levelIsMean", "a price level is the mean of the futures (1) or their middle (0)", "count", 0, 1, "the middle: half the futures are dearer", s => s.LevelMeaning == LevelMeaning.Expected ? 1 : 0, (s, v) => s with { LevelMeaning = v >= 0.5 ? LevelMeaning.Expected : LevelMeaning.Middle }),
        new("seed", "random seed", "count", 0, 9e15, "any whole number; the same seed gives the same figures", s => s.Seed, (s, v) => s with { Seed = (long)v }),
    ];
}
