using FarmPortfolio.Engine.Fuel;
using FarmPortfolio.Engine.Scenarios;
using FarmPortfolio.Engine.Units;
using static System.Math;

namespace FarmPortfolio.Engine.Tests.Scenarios;

/// <summary>Closed forms of the price model, written down apart from the engine, and futures to hold to them.</summary>
internal static class FuturesLaw
{
    private const int Replicates = 40;

    /// <summary>Months of the horizon that lie 1, 5 and 15 years after the last month of the records.</summary>
    internal static readonly int[] Months = [7, 55, 175];

    /// <summary>Four series, three of them wholesale, and five winters; paid as they are quoted, so that prices drawn are prices of the law, unless they are to reach the user.</summary>
    internal static FuturesSpec Spec(PathSampling sampling, bool cold = false, LevelMeaning meaning = LevelMeaning.Middle, bool delivered = false)
    {
        var set = new ScenarioSetFacts { FirstSeason = 2026, SeasonCount = 15, ReplicateCount = Replicates, PathCount = 512, Seed = 31, Sampling = sampling, ColdMonthTerm = cold, LevelMeaning = meaning };
        var fuels = new[] { FuelKind.NaturalGas, FuelKind.Propane, FuelKind.FuelOil, FuelKind.Electricity };
        var (spec, faults) = FuturesSpec.Of(set, fuels.ToDictionary(f => f, Series), [2015, 2016, 2017, 2018, 2019], [.. Enumerable.Range(0, 5).Select(Winter)]);
        Assert.Empty(faults);
        return delivered ? spec! : spec! with { Fuels = [.. spec.Fuels.Select(f => f with { PassThrough = null })] };
    }

    internal static FuturesBlock[] Blocks(FuturesSpec spec) => [.. Enumerable.Range(0, Replicates).Select(new Futures(spec).Draw)];

    /// <summary>A cosine over the year; winters two kelvin apart and more, each with colder and milder months of its own.</summary>
    private static double[] Winter(int number) => [.. Enumerable.Range(0, 12).Select(m => 10 + 12 * Cos(PI * (m - 0.5) / 6) + number + 2.5 * Sin(2.1 * number * m))];

    private static PriceSeriesFacts Series(FuelKind fuel) => new()
    {
        Fuel = fuel,
        Market = fuel == FuelKind.Electricity ? PriceMarket.Retail : PriceMarket.Wholesale,
        Class = fuel == FuelKind.Electricity ? PriceClass.Electricity : PriceClass.WholesaleFuel,
        Unit = fuel == FuelKind.NaturalGas ? "MMBtu" : HeatingValues.UnitsOf(fuel)[0],
        FirstMonthOn = new(2016, 1, 1),
        UsdPerUnit = [.. Enumerable.Range(0, 122).Select(i => (double?)(2 + 0.4 * Sin(i * 0.37) + 0.2 * Sin(i * 1.7)))],
    };

    internal static double Log(FuturesSpec spec, FuturesBlock block, int fuel, int path, int month) =>
        Math.Log(block.UsdPerKwh[fuel][path * 12 * block.Seasons + month] * HeatingValues.KwhPerUnit(spec.Fuels[fuel].Fuel, spec.Fuels[fuel].Unit)!.Value);

    internal static int Steps(FuturesSpec spec, FuelSpec fuel, int month) =>
        12 * spec.Set.FirstSeason + 6 + month - (12 * fuel.Model.LastMonthOn.Year + fuel.Model.LastMonthOn.Month - 1);

    /// <summary>Median and variance before the unrest, of the log price.</summary>
    internal static (double Median, double Variance) Of(FuturesSpec spec, FuelSpec fuel, int month)
    {
        var (m, steps) = (fuel.Model, Steps(spec, fuel, month));
        var shape = m.Shape[(6 + month) % 12] - Math.Log(m.Shape.Average(Exp));
        var number = spec.Fuels.ToList().IndexOf(fuel);
        return (m.Median(steps / 12.0) + shape, Covariance(spec, number, number, month));
    }

    /// <summary>Added up month by month, the season of unrest in the short-term factor: 1.45 from November to March (1.25 for gas where the cold is a term of its own), 0.45 else, wholesale only.</summary>
    internal static double Covariance(FuturesSpec spec, int f, int g, int month)
    {
        var (a, b) = (spec.Fuels[f], spec.Fuels[g]);
        var (short_, long_) = (Correlation.ShortDefault[4 * f + g], Correlation.LongDefault[4 * f + g]);
        var (steps, sum) = (Steps(spec, a, month), 0.0);
        for (var back = 0; back < steps; back++)
        {
            var calendar = (6 + month + 1200 - back) % 12;
            double Unrest(FuelSpec s) => !s.Wholesale ? 1 : calendar is >= 10 or <= 2 ? spec.Set.ColdMonthTerm && s.Fuel == FuelKind.NaturalGas ? 1.25 : 1.45 : 0.45;
            sum += short_ * Unrest(a) * Unrest(b) * Step(a.Model.ShortVolatility, a.Model.ShortReversion, back) * Step(b.Model.ShortVolatility, b.Model.ShortReversion, back);
            sum += long_ * Step(a.Model.LongVolatility, a.Model.LongReversion, back) * Step(b.Model.LongVolatility, b.Model.LongReversion, back);
        }

        return sum;
    }

    /// <summary>Standard deviation of a month's step, faded over the months since.</summary>
    private static double Step(double volatility, double reversion, int back) =>
        volatility * Sqrt(reversion > 0 ? (1 - Exp(-reversion / 6)) / (2 * reversion) : 1.0 / 12) * Exp(-reversion * back / 12);

    internal static void Close(string what, double expected, double[] replicates)
    {
        var mean = replicates.Average();
        var se = Sqrt(replicates.Sum(v => (v - mean) * (v - mean)) / (replicates.Length - 1) / replicates.Length);
        Assert.True(Abs(mean - expected) <= 4 * se, $"{what}: {expected:R} by the closed form, {mean:R} drawn, standard error {se:R}");
    }
}
