namespace FarmPortfolio.Engine.Fuel;

/// <summary>Settles one contract over one season: block and what is left of it, steps, minimum take, fees, demand charge.</summary>
internal static class TermSettlement
{
    private const double HoursPerMonth = 730.5;

    /// <summary>Settles a contract on its share of the volume.</summary>
    /// <param name="term">Contract.</param>
    /// <param name="running">Contract of each month.</param>
    /// <param name="number">Number of this one.</param>
    /// <param name="active">Months it runs in.</param>
    /// <param name="index">Index by month, US dollars a kWh.</param>
    /// <param name="volume">Fuel by month, kWh, of the whole tank or meter.</param>
    /// <param name="rest">Less what this contract covers, on return.</param>
    /// <param name="carried">Left from the season before; left for the next.</param>
    /// <param name="monthUsd">Takes what each month's fuel costs.</param>
    /// <returns>The charges beside the months' fuel.</returns>
    public static SeasonCharges Of(
        ContractTerm term, ReadOnlySpan<int> running, int number, int active, ReadOnlySpan<double> index, ReadOnlySpan<double> volume, Span<double> rest, ref Carried carried, Span<double> monthUsd)
    {
        var part = active / 12.0;
        var (block, bought) = (term.BlockKwh, term.Leftover is null ? 0.0 : term.BlockKwh);
        var (taken, paid, prices, demand, money) = (0.0, 0.0, 0.0, 0.0, 0.0);
        var blockPrice = term.PriceAt(index[0], index[0]);
        for (var m = 0; m < 12; m++)
        {
            if (running[m] != number)
            {
                continue;
            }

            var use = term.Weight * volume[m];
            rest[m] -= use;
            taken += use;
            var price = term.PriceAt(index[m], index[0]);
            prices += price / active;
            var old = Math.Min(use, carried.Kwh);
            carried.Kwh -= old;
            var inside = Math.Min(use - old, block);
            block -= inside;
            var over = use - old - inside;
            var usd = inside * price + (over > 0 ? over * (term.Adder + term.Share * index[m]) : 0);
            money += inside * price * term.MoneyRate * Math.Max(0, m - term.PaidMonth) / 12;
            for (var t = 0; t < term.Tiers.Count; t++)
            {
                var (from, adder) = term.Tiers[t];
                var to = t + 1 < term.Tiers.Count ? term.Tiers[t + 1].FromKwh : double.PositiveInfinity;
                usd += adder * Math.Max(0, Math.Min(use, to) - from);
            }

            demand += term.DemandUsdPerMeanKw * use / HoursPerMonth;
            paid += usd;
            monthUsd[m] += usd;
        }

        var left = term.Leftover is null ? 0 : Math.Min(bought, block);
        var credit = Math.Min(carried.Usd, paid);
        carried.Usd -= credit;
        var leftover = -credit;
        switch (term.Leftover)
        {
            case LeftoverRule.Lost:
                leftover += left * blockPrice;
                break;
            case LeftoverRule.BilledToShare:
                leftover += left * blockPrice * term.BilledShare;
                break;
            case LeftoverRule.CarriedAtOldPrice:
                leftover += left * blockPrice;
                carried.Kwh += left;
                break;
            case LeftoverRule.CarriedAtNewPrice:
                leftover += left * blockPrice;
                carried.Usd += left * blockPrice;
                break;
        }

        var shortKwh = Math.Max(0, term.MinimumKwh * part - taken);
        var minimum = shortKwh > 0 ? shortKwh * (taken > 0 ? paid / taken : prices) : 0;
        var fees = active * term.MonthlyFeeUsd + term.SeasonFeeUsd + part * term.RentUsd + taken * term.DeliveryUsdPerKwh;
        return new(0, fees, leftover, minimum, demand, 0, money, left, shortKwh);
    }
}
