using FarmPortfolio.Engine.Economics;
using FarmPortfolio.Engine.Units;
using static System.Math;

namespace FarmPortfolio.Engine.Studies;

/// <summary>Turns one option's money over all paths into distributions.</summary>
internal static class OptionSummary
{
    /// <summary>The result of an option.</summary>
    /// <param name="context">What all houses share.</param>
    /// <param name="house">House.</param>
    /// <param name="terms">What does not depend on the path.</param>
    /// <param name="money">Its money, paybacks counted.</param>
    /// <param name="work">Arrays of the thread.</param>
    /// <returns>The result.</returns>
    public static OptionResult Of(StudyContext context, StudyHouse house, OptionTerms terms, OptionMoney money, Workspace work)
    {
        var (plan, payback, replicates, seasons) = (terms.Plan, money.Payback, context.Replicates, context.Seasons);
        var toStart = Pow(1 + context.Set.DiscountRate, -plan.StartSeason);
        var residual = plan.ResidualUsd * Pow(1 + context.Set.DiscountRate, -(seasons - plan.StartSeason));
        var (bySeason, cumulated) = Seasons(context, money.Net, work.Cumulated);
        var perPath = work.PerPath.AsSpan();
        Rows.Worth(payback.PresentUsd, residual, money.Outlay, toStart, perPath);
        var npv = Distribution.Of(perPath, replicates, histogram: true);
        var losses = Below(perPath);
        Rows.Ratio(payback.SumUsd, seasons, perPath);
        var saving = Distribution.Of(perPath, replicates);
        Distribution? toInvestment = null;
        var hasOutlay = terms.Costs.OutlayUsd > 0;
        if (hasOutlay && plan.PremiumUsd > 0)
        {
            Rows.Ratio(payback.PresentUsd, residual, money.Outlay, 0.01 * plan.PremiumUsd, perPath);
            toInvestment = Distribution.Of(perPath, replicates);
        }

        var (fuelSaved, co2) = Fuel(context, house, terms);
        var burnt = terms.SwitchKwh * terms.Factor.Mean;
        var none = new Payback(new double[seasons], 0, 0);
        return new()
        {
            HouseId = house.Id,
            Key = terms.Option.Key,
            Fuel = house.Fuel,
            Grade = house.Grade,
            OutlayUsd = plan.PremiumUsd,
            StartSeason = plan.StartSeason,
            BaseHeatKwh = terms.BaseHeatKwh,
            HeatSavedKwh = (terms.BaseHeatKwh - terms.HeatKwh) * terms.Factor.Mean,
            RealisedMean = terms.Factor.Mean,
            FuelSavedKwh = fuelSaved,
            NewFuel = terms.Switch?.Fuel,
            NewFuelKwh = terms.Switch is null ? null : burnt,
            Co2SavedKg = co2 - (terms.Switch is { } moved ? burnt * HeatingValues.Co2KgPerKwh(moved.Fuel, FuelSets.EmissionsNamed(context.Set.EmissionSet)) : 0),
            SavingUsd = saving,
            NpvUsd = npv,
            SavingsToInvestment = toInvestment,
            WorstSeasonUsd = Distribution.Of(payback.WorstUsd, replicates),
            SavingBySeason = bySeason,
            NetBySeason = cumulated,
            Lasting = hasOutlay ? Payback.Of(payback.Lasting, seasons, replicates) : none,
            First = hasOutlay ? Payback.Of(payback.First, seasons, replicates) : none,
            LastingDiscounted = hasOutlay ? Payback.Of(payback.LastingDiscounted, seasons, replicates) : none,
            FirstDiscounted = hasOutlay ? Payback.Of(payback.FirstDiscounted, seasons, replicates) : none,
            LossShare = (double)losses / perPath.Length,
            OnePath = OnePath(money.Net, context.Paths, seasons),
            FuelSavingUsd = (OrderStatistics.Sum(payback.SumUsd) / context.Paths + plan.CostUsd[plan.StartSeason..].Sum()) / seasons,
            Costs = terms.Costs,
        };
    }

    private static int Below(ReadOnlySpan<double> values)
    {
        var count = 0;
        foreach (var value in values)
        {
            count += value < 0 ? 1 : 0;
        }

        return count;
    }

    private static (List<SeasonMean> BySeason, List<Distribution> Cumulated) Seasons(StudyContext context, double[] net, double[] sums)
    {
        var (bySeason, cumulated) = (new List<SeasonMean>(context.Seasons), new List<Distribution>(context.Seasons));
        Array.Clear(sums);
        for (var s = 0; s < context.Seasons; s++)
        {
            var season = net.AsSpan(s * context.Paths, context.Paths);
            Rows.Add(sums, season);
            bySeason.Add(SeasonMean.Of(season, context.Replicates));
            cumulated.Add(Distribution.Of(sums, context.Replicates));
        }

        return (bySeason, cumulated);
    }

    /// <summary>Fuel and CO2 saved in a season, mean of the winters, from the season it is built.</summary>
    private static (double FuelKwh, double Co2Kg) Fuel(StudyContext context, StudyHouse house, OptionTerms terms)
    {
        var (kwh, kg, start) = (0.0, 0.0, terms.Plan.StartSeason);
        foreach (var supply in house.Supplies)
        {
            var standing = house.StandingEfficiency(supply, start);
            var kept = terms.Switch is not null && supply.HeaterNo == 0 ? 0 : terms.HeatKwh / (supply.HeaterNo == 0 ? terms.Plan.Efficiency[start] : standing);
            var saved = supply.Share * (terms.BaseHeatKwh / standing - kept) * terms.Factor.Mean;
            (kwh, kg) = (kwh + saved, kg + saved * HeatingValues.Co2KgPerKwh(supply.Fuel, FuelSets.EmissionsNamed(context.Set.EmissionSet)));
        }

        return (kwh, kg);
    }

    private static double[] OnePath(double[] net, int paths, int seasons)
    {
        var (path, sum) = (new double[seasons], 0.0);
        for (var s = 0; s < seasons; s++)
        {
            path[s] = sum += net[s * paths];
        }

        return path;
    }
}
