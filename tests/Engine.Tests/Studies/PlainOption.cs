using FarmPortfolio.Engine.Economics;
using FarmPortfolio.Engine.Fuel;
using FarmPortfolio.Engine.HeatDemand;
using FarmPortfolio.Engine.Retrofits;
using FarmPortfolio.Engine.Scenarios;
using FarmPortfolio.Engine.Studies;
using FarmPortfolio.Engine.Tests.Economics;
using FarmPortfolio.Engine.Units;
using FarmPortfolio.Engine.Weather;

namespace FarmPortfolio.Engine.Tests.Studies;

/// <summary>
/// One option of one retrofit, reckoned the slow way: path by path, season by season, month by month, one number at a time, from the definitions. No lanes, no
/// blocks, no tables laid side by side, <see cref="Math.Exp(double)"/> for exp, quantiles by sorting.
/// </summary>
internal sealed class PlainOption
{
    private PlainOption(int paths, int seasons)
    {
        (Net, NpvUsd, Lasting, First) = (new double[paths, seasons], new double[paths], new int[paths], new int[paths]);
        (LastingDiscounted, FirstDiscounted, StandingUsd) = (new int[paths], new int[paths], new double[paths, seasons]);
    }

    public double[,] Net { get; }

    public double[,] StandingUsd { get; }

    public double[] NpvUsd { get; }

    public int[] Lasting { get; }

    public int[] First { get; }

    public int[] LastingDiscounted { get; }

    public int[] FirstDiscounted { get; }

    public static PlainOption Of(Portfolio portfolio, string houseId, OptionFacts option)
    {
        var (set, facts) = (portfolio.Set, portfolio.Houses[houseId]);
        var group = facts.Supplies[0].SupplyGroupId;
        var fuel = portfolio.SupplyGroups[group].Fuel;
        var contract = portfolio.Contracts.GetValueOrDefault(group);
        var (futures, _) = StudyFutures.Of(portfolio);
        var model = HouseModels.Of(facts, portfolio.Catalogue, new(set.CarryOver, set.PurgeVolumesPerDay, set.LossLevel), set.FirstSeason, fuel).Model! with { HouseId = houseId };
        var pool = futures!.Years(portfolio.Farms[facts.FarmId].WeatherStationId!)!;
        var with = OptionModels.Of(model, option).Model!;
        var (standing, table) = (DemandTables.Of(OptionModels.AsItStands(model), pool), DemandTables.Of(with, pool));
        var costs = OptionCosts.Of(model, portfolio.Farms[facts.FarmId], option, [], set, table.Uses);
        var plan = CashPlan.Of(model, option, costs, set, with.Efficiency);
        var byAir = ByAir(model, option, pool);
        var result = new PlainOption(set.ReplicateCount * set.PathCount, set.SeasonCount);
        var draw = new Futures(futures.Spec);
        for (var r = 0; r < set.ReplicateCount; r++)
        {
            var block = draw.Draw(r);
            for (var p = 0; p < set.PathCount; p++)
            {
                var path = r * set.PathCount + p;
                var loss = LogNormal(portfolio.Catalogue.Default("gradeCSd"), Noise.Normal(set.Seed, NoisePurpose.LossOwn, facts.DrawKey, path, 0));
                var realised = Realised(portfolio, option.Parts[0], facts.DrawKey, path) *
                    byAir(Math.Exp(portfolio.Catalogue.Default("airChangesSdLn") * Noise.Normal(set.Seed, NoisePurpose.AirOwn, facts.DrawKey, path, 0)));
                for (var s = 0; s < set.SeasonCount; s++)
                {
                    var cell = p * set.SeasonCount + s;
                    var (saved, before) = (0.0, 0.0);
                    var efficiency = CashPlan.Standing(model.Heaters[0], set.FirstSeason, s);
                    for (var m = 0; m < 12; m++)
                    {
                        var paid = Paid(contract, fuel, block.Price(fuel)[12 * cell + m], 12 * (set.FirstSeason + s) + 6 + m);
                        var demand = standing.DemandKwh(block.Winter[cell], m, block.OffsetK[cell]);
                        before += demand / efficiency * paid;
                        saved += (demand / efficiency - table.DemandKwh(block.Winter[cell], m, block.OffsetK[cell]) / plan.Efficiency[s]) * paid;
                    }

                    result.StandingUsd[path, s] = before * loss;
                    result.Net[path, s] = s < plan.StartSeason ? 0 : saved * loss * realised * Fade(portfolio, option.Parts[0], s - plan.StartSeason) - plan.CostUsd[s];
                }

                var z = Math.Sqrt(set.CommonShare) * Noise.Normal(set.Seed, NoisePurpose.OutlayCommon, costs.QuoteYear, path, 0) +
                    Math.Sqrt(1 - set.CommonShare) * Noise.Normal(set.Seed, NoisePurpose.OutlayOwn, facts.DrawKey, path, 0);
                result.Settle(path, plan, plan.OutlayUsd * LogNormal(costs.SpreadSd, z) - plan.SparedUsd, set.DiscountRate);
            }
        }

        return result;
    }

    private void Settle(int path, CashPlan plan, double outlay, double rate)
    {
        var flow = Enumerable.Range(plan.StartSeason, Net.GetLength(1) - plan.StartSeason).Select(s => Net[path, s]).ToArray();
        var discounted = flow.Select((v, i) => v / Math.Pow(1 + rate, i + 1)).ToArray();
        (Lasting[path], First[path]) = (PaybackOf.Lasting(outlay, flow), PaybackOf.First(outlay, flow));
        (LastingDiscounted[path], FirstDiscounted[path]) = (PaybackOf.Lasting(outlay, discounted), PaybackOf.First(outlay, discounted));
        NpvUsd[path] = (discounted.Sum() + plan.ResidualUsd / Math.Pow(1 + rate, flow.Length) - outlay) / Math.Pow(1 + rate, plan.StartSeason);
    }

    private static double Paid(ContractFacts? contract, FuelKind fuel, double index, int month)
    {
        if (contract is null)
        {
            return index;
        }

        var kwh = HeatingValues.KwhPerUnit(fuel, contract.Unit)!.Value;
        var runs = contract.Kind == ContractKind.Fixed && (contract.EndsOn is not { } end || month <= 12 * end.Year + end.Month - 1);
        return runs ? contract.PriceUsdPerUnit!.Value / kwh : (contract.AdderUsdPerUnit ?? 0) / kwh + (contract.IndexShare ?? 1) * index;
    }

    private static double Realised(Portfolio portfolio, string code, long drawKey, int path)
    {
        var set = portfolio.Set;
        var sd = portfolio.Catalogue.Value(CatalogueKind.Retrofit, code, "factorSd");
        var shared = Noise.Normal(set.Seed, NoisePurpose.SavingCommon, Noise.Key(code), path, 0);
        var own = Noise.Normal(set.Seed, NoisePurpose.SavingOwn, drawKey ^ Noise.Key("own " + code), path, 0);
        var mean = portfolio.Catalogue.Value(CatalogueKind.Retrofit, code, "factorMean", 1);
        return Math.Max(0, mean + sd * (Math.Sqrt(set.CommonShare) * shared + Math.Sqrt(1 - set.CommonShare) * own));
    }

    /// <summary>What a factor on the air changes does to the share saved, the house burning the same: Lagrange's polynomial through three balances of the middling winter.</summary>
    private static Func<double, double> ByAir(HouseModel model, OptionFacts option, IReadOnlyList<WeatherYear> pool)
    {
        var winter = pool.OrderBy(y => y.DegreeDaysK(15)).ElementAt(pool.Count / 2);
        double Share(double factor)
        {
            var house = AirLeaks.SameLoss(model, factor);
            var (standing, with) = (OptionModels.AsItStands(house), OptionModels.Of(house, option).Model!);
            return 1 - HeatBalance.Season(with, winter).TotalKwh / with.Efficiency / (HeatBalance.Season(standing, winter).TotalKwh / standing.Efficiency);
        }

        var (described, step) = (Share(1), Math.Exp(0.35 * 1.2815515655446004));
        double[] x = [1 / step, 1, step];
        var y = x.Select(f => Share(f) / described).ToArray();
        return f => Math.Max(0, Enumerable.Range(0, 3).Sum(i => y[i] * Enumerable.Range(0, 3).Where(j => j != i).Aggregate(1.0, (product, j) => product * (f - x[j]) / (x[i] - x[j]))));
    }

    private static double Fade(Portfolio portfolio, string code, int since) =>
        (since == 0 ? portfolio.Catalogue.Value(CatalogueKind.Retrofit, code, "factorFirstSeason", 1) : 1) * Math.Pow(1 - portfolio.Catalogue.Value(CatalogueKind.Retrofit, code, "fadePerYear"), since);

    private static double LogNormal(double sd, double z) => Math.Exp(sd * z - sd * sd / 2);
}
