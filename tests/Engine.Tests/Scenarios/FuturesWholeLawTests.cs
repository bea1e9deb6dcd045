using FarmPortfolio.Engine.Scenarios;
using FarmPortfolio.Engine.Units;
using static System.Math;

namespace FarmPortfolio.Engine.Tests.Scenarios;

/// <summary>
/// What the plain law leaves out, against closed forms of its own: a level that is meant as the mean, the cold months of gas, the way from the hub to the user.
/// 1, 5 and 15 years from the records' end, within 4 standard errors read from 40 independent replicates, plain and Sobol alike.
/// </summary>
public class FuturesWholeLawTests
{
    private static readonly double[] Unrest = [0.7, 1, 1, 1.5];

    [Theory, InlineData(PathSampling.Plain), InlineData(PathSampling.Sobol)]
    public void A_level_meant_as_the_mean_is_the_mean_and_its_middle_lies_below(PathSampling sampling)
    {
        var spec = FuturesLaw.Spec(sampling, meaning: LevelMeaning.Expected);
        var blocks = FuturesLaw.Blocks(spec);
        foreach (var month in FuturesLaw.Months)
        {
            for (var f = 0; f < spec.Fuels.Count; f++)
            {
                var (level, variance) = FuturesLaw.Of(spec, spec.Fuels[f], month);
                var (fuel, what) = (f, $"{sampling}, {spec.Fuels[f].Fuel}, month {month}");
                FuturesLaw.Close($"{what}, mean price over its level", 1, [.. blocks.Select(b => Enumerable.Range(0, b.Paths).Average(p => Exp(FuturesLaw.Log(spec, b, fuel, p, month) - level)))]);
                var middle = level - Math.Log(MeanOfExp(variance));
                FuturesLaw.Close($"{what}, share below the middle", 0.5, [.. blocks.Select(b => Enumerable.Range(0, b.Paths).Average(p => FuturesLaw.Log(spec, b, fuel, p, month) < middle ? 1.0 : 0))]);
            }
        }
    }

    /// <summary>ln of gas gains 0.04 C, C = K + 0.7 C of the month before, K kelvin below the pool's mean in November to March; the restless season of gas is then 1.25. Nobody else gains.</summary>
    [Theory, InlineData(PathSampling.Plain), InlineData(PathSampling.Sobol)]
    public void Cold_months_add_their_own_variance_to_gas_and_no_mean(PathSampling sampling)
    {
        var spec = FuturesLaw.Spec(sampling, cold: true);
        var blocks = FuturesLaw.Blocks(spec);
        foreach (var month in FuturesLaw.Months.Append(67))
        {
            var (median, variance) = FuturesLaw.Of(spec, spec.Fuels[0], month);
            var cold = 0.04 * 0.04 * ColdSquare(spec, month);
            var what = $"{sampling}, gas, month {month}";
            Assert.True(month % 12 is < 4 or > 8 || cold > 0.003, $"{what}: the cold adds {cold}");
            FuturesLaw.Close($"{what}, mean", 0, [.. blocks.Select(b => Enumerable.Range(0, b.Paths).Average(p => FuturesLaw.Log(spec, b, 0, p, month) - median))]);
            FuturesLaw.Close($"{what}, variance", Unrest.Average(w => w * w) * variance + cold, [.. blocks.Select(b => Enumerable.Range(0, b.Paths).Average(p => Pow(FuturesLaw.Log(spec, b, 0, p, month) - median, 2)))]);
            // what the winter met does to the price of its months, path by path: covariance with K of the month is 0.04 times that of C and K
            FuturesLaw.Close($"{what}, covariance with the cold of the winter", 0.04 * ColdProduct(spec, month), [.. blocks.Select(b => Enumerable.Range(0, b.Paths).Average(p =>
                (FuturesLaw.Log(spec, b, 0, p, month) - median) * spec.ColdK[b.Winter[p * b.Seasons + month / 12]][month % 12]))]);
        }

        // evenly spread draws share their leading components, plain ones are each fuel's own: there nobody else moves by a bit
        var without = new Futures(FuturesLaw.Spec(sampling)).Draw(0);
        Assert.NotEqual(without.UsdPerKwh[0], blocks[0].UsdPerKwh[0]);
        Assert.All([1, 2, 3], f => Assert.True(sampling == PathSampling.Sobol || without.UsdPerKwh[f].SequenceEqual(blocks[0].UsdPerKwh[f]), $"fuel {f} moved with the cold of gas"));
    }

    /// <summary>Mean delivered price = constant grown + what this month and the two before give; the residual has none.</summary>
    [Theory, InlineData(PathSampling.Plain), InlineData(PathSampling.Sobol)]
    public void A_price_on_its_way_to_the_user_keeps_the_mean_of_the_closed_form(PathSampling sampling)
    {
        var spec = FuturesLaw.Spec(sampling, delivered: true);
        var blocks = FuturesLaw.Blocks(spec);
        foreach (var month in FuturesLaw.Months)
        {
            foreach (var fuel in spec.Fuels.Where(f => f.PassThrough is not null))
            {
                var (p, number) = (fuel.PassThrough!, (int)fuel.Fuel);
                double Series(int m) => FuturesLaw.Of(spec, fuel, m) is var law ? Exp(law.Median) * MeanOfExp(law.Variance) : 0;
                var expected = p.Constant * Exp(0.02 * FuturesLaw.Steps(spec, fuel, month) / 12.0) + p.Now * Series(month) + p.Last * Series(month - 1) + p.Before * Series(month - 2);
                var kwh = HeatingValues.KwhPerUnit(fuel.Fuel, fuel.DeliveredUnit)!.Value;
                FuturesLaw.Close($"{sampling}, {fuel.Fuel} delivered, month {month}, mean over the closed form", 1, [.. blocks.Select(b => Enumerable.Range(0, b.Paths).Average(path => kwh * b.UsdPerKwh[number][path * 12 * b.Seasons + month]) / expected)]);
            }
        }
    }

    /// <summary>Mean of a lognormal whose variance is mixed over the unrest, its middle being 1.</summary>
    private static double MeanOfExp(double variance) => Unrest.Average(w => Exp(w * w * variance / 2));

    /// <summary>Mean square of C in a month: the months of each winter met so far, faded, are one draw; winters of seasons are independent.</summary>
    private static double ColdSquare(FuturesSpec spec, int month) => Enumerable.Range(0, month / 12 + 1).Sum(s => spec.ColdK.Average(k => Pow(Faded(k, s, month), 2)));

    private static double ColdProduct(FuturesSpec spec, int month) => spec.ColdK.Average(k => Faded(k, month / 12, month) * k[month % 12]);

    private static double Faded(double[] coldK, int season, int month) => Enumerable.Range(12 * season, 12).Where(m => m <= month).Sum(m => Pow(0.7, month - m) * coldK[m - 12 * season]);
}
