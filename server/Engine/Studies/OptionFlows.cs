using FarmPortfolio.Engine.Economics;
using static System.Math;

namespace FarmPortfolio.Engine.Studies;

/// <summary>Gathers one option's money over all paths and turns it into distributions.</summary>
internal sealed class OptionFlows(int paths, int seasons, int replicates)
{
    private readonly double[] net = new double[paths * seasons];
    private readonly double[] npv = new double[paths];
    private readonly double[] ratio = new double[paths];
    private readonly double[] mean = new double[paths];
    private readonly int[][] counts = [.. Enumerable.Range(0, 4).Select(_ => new int[(seasons + 1) * replicates])];
    private double[]? onePath;

    /// <summary>Mean net saving of a season by path.</summary>
    public float[] SavingByPath => [.. mean.Select(m => (float)m)];

    /// <summary>Takes in one path.</summary>
    public void Add(int path, ReadOnlySpan<double> flow, CashPlan plan, double outlay, double rate)
    {
        outlay *= plan.OutlayGrowth;
        var counted = flow[plan.StartSeason..];
        Span<double> discounted = stackalloc double[counted.Length];
        var (value, factor, sum) = (0.0, 1.0, 0.0);
        for (var s = 0; s < counted.Length; s++)
        {
            factor /= 1 + rate;
            discounted[s] = counted[s] * factor;
            value += discounted[s];
            sum += counted[s];
        }

        value += plan.ResidualUsd * factor;
        var toStart = Pow(1 + rate, -plan.StartSeason);
        npv[path] = (value - outlay) * toStart;
        ratio[path] = outlay > 0 ? value / outlay : 0;
        mean[path] = sum / seasons;
        for (var s = 0; s < seasons; s++)
        {
            net[s * paths + path] = flow[s];
        }

        onePath ??= Cumulated(flow);
        if (outlay > 0)
        {
            Count(0, path, PaybackOf.Lasting(outlay, counted));
            Count(1, path, PaybackOf.First(outlay, counted));
            Count(2, path, PaybackOf.Lasting(outlay, discounted));
            Count(3, path, PaybackOf.First(outlay, discounted));
        }
    }

    /// <summary>The option's result.</summary>
    public OptionResult Result(
        string houseId, string key, FuelKind fuel, DataGrade grade, CashPlan plan, OptionCosts costs, double baseHeat, double heatSaved, double realisedMean, double fuelSaved, double co2)
    {
        var losses = npv.Count(v => v < 0);
        var (bySeason, cumulated, sums) = (new List<Distribution>(), new List<Distribution>(), new double[paths]);
        var copy = new double[paths];
        for (var s = 0; s < seasons; s++)
        {
            var season = net.AsSpan(s * paths, paths);
            for (var p = 0; p < paths; p++)
            {
                sums[p] += season[p];
            }

            sums.CopyTo(copy, 0);
            cumulated.Add(Distribution.Of(copy, replicates));
            season.CopyTo(copy);
            bySeason.Add(Distribution.Of(copy, replicates));
        }

        mean.CopyTo(copy, 0);
        return new()
        {
            HouseId = houseId,
            Key = key,
            Fuel = fuel,
            Grade = grade,
            OutlayUsd = costs.OutlayUsd * plan.OutlayGrowth,
            StartSeason = plan.StartSeason,
            BaseHeatKwh = baseHeat,
            HeatSavedKwh = heatSaved,
            RealisedMean = realisedMean,
            FuelSavedKwh = fuelSaved,
            Co2SavedKg = co2,
            SavingUsd = Distribution.Of(copy, replicates),
            NpvUsd = Distribution.Of([.. npv], replicates, histogram: true),
            SavingsToInvestment = costs.OutlayUsd > 0 ? Distribution.Of([.. ratio], replicates) : null,
            SavingBySeason = bySeason,
            NetBySeason = cumulated,
            Lasting = Shares(0),
            First = Shares(1),
            LastingDiscounted = Shares(2),
            FirstDiscounted = Shares(3),
            LossShare = (double)losses / paths,
            OnePath = onePath ?? [],
            Costs = costs,
        };
    }

    private static double[] Cumulated(ReadOnlySpan<double> flow)
    {
        var path = new double[flow.Length];
        var sum = 0.0;
        for (var s = 0; s < flow.Length; s++)
        {
            path[s] = sum += flow[s];
        }

        return path;
    }

    private void Count(int kind, int path, int season) => counts[kind][path / (paths / replicates) * (seasons + 1) + season]++;

    private Payback Shares(int kind)
    {
        var shares = new double[seasons];
        var early = new double[replicates];
        var each = paths / replicates;
        var never = 0.0;
        for (var r = 0; r < replicates; r++)
        {
            never += (double)counts[kind][r * (seasons + 1)] / paths;
            for (var s = 1; s <= seasons; s++)
            {
                var count = counts[kind][r * (seasons + 1) + s];
                shares[s - 1] += (double)count / paths;
                early[r] += s <= (seasons + 1) / 2 ? (double)count / each : 0;
            }
        }

        return new(shares, never, Distribution.HalfWidthOf(early));
    }
}
