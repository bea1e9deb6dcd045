using FarmPortfolio.Engine.Units;
using static FarmPortfolio.Engine.Fuel.PastBills;

namespace FarmPortfolio.Engine.Fuel;

/// <summary>One contract settled over a past season on its share of what was bought.</summary>
internal sealed class PastContract
{
    private const decimal HoursPerMonth = 730.5m;
    private readonly PastSeason season;
    private readonly ContractFacts c;
    private readonly bool[] runs;
    private readonly SortedSet<int> missing;
    private readonly decimal perUnit;
    private readonly IReadOnlyList<decimal?> index;
    private readonly List<BillLine> lines = [];

    /// <summary>Makes ready.</summary>
    /// <param name="season">Season.</param>
    /// <param name="contract">Sound contract.</param>
    /// <param name="runs">Months it runs in.</param>
    /// <param name="ownIndex">Its own index in its own unit; null = the season's.</param>
    /// <param name="missing">Takes the months whose index is not on record.</param>
    public PastContract(PastSeason season, ContractFacts contract, bool[] runs, IReadOnlyList<decimal?>? ownIndex, SortedSet<int> missing)
    {
        (this.season, c, this.runs, this.missing) = (season, contract, runs, missing);
        perUnit = c.Unit == season.Unit ? 1 : (decimal)(HeatingValues.KwhPerUnit(season.Fuel, c.Unit, season.Heating)!.Value / HeatingValues.KwhPerUnit(season.Fuel, season.Unit, season.Heating)!.Value);
        index = ownIndex ?? [.. season.Index.Select(i => i is { } usd ? Price(usd * perUnit) : (decimal?)null)];
    }

    /// <summary>Settles it.</summary>
    /// <param name="volume">Volume of the tank or meter by month, in the season's unit.</param>
    /// <param name="rest">Less what this contract covers, on return.</param>
    /// <returns>Its lines.</returns>
    public PastBill Settle(decimal[] volume, decimal[] rest)
    {
        var block = c.Kind != ContractKind.Indexed && c.BlockUnits is { } units ? (decimal)units : decimal.MaxValue;
        var (share, taken, paid, prices) = ((decimal)(c.VolumeShare ?? 1), 0m, 0L, 0m);
        var active = runs.Count(r => r);
        for (var m = 0; m < 12; m++)
        {
            if (!runs[m])
            {
                continue;
            }

            var part = share == 1 ? volume[m] : Math.Round(share * volume[m], 1, MidpointRounding.AwayFromZero);
            rest[m] -= part;
            var use = perUnit == 1 ? part : Math.Round(part / perUnit, 1, MidpointRounding.AwayFromZero);
            var price = PriceIn(m, use > 0);
            (taken, prices) = (taken + use, prices + price / active);
            paid += Fuel(m, use, price, ref block);
            paid += Steps(m, use);
            Charges(m, use, share);
        }

        if (c.SeasonFeeUsd is > 0 and var fee)
        {
            Flat(null, "fee of the season", (decimal)fee);
        }

        var (own, credit) = c.Kind == ContractKind.PreBought ? Leftover(block) : (0, 0);
        var least = Math.Round((decimal)(c.MinimumTakeUnits ?? 0) * active / 12, 1, MidpointRounding.AwayFromZero);
        if (least > taken)
        {
            Line(null, $"short of {least:0.#} {c.Unit}, at the mean price paid", least - taken, Price(taken > 0 ? paid / 100m / taken : prices));
        }

        return new(lines, own, credit);
    }

    private long Fuel(int m, decimal use, decimal price, ref decimal block)
    {
        var inside = Math.Min(use, block);
        block -= block == decimal.MaxValue ? 0 : inside;
        var paid = inside > 0 ? Line(m, c.Kind == ContractKind.PreBought ? "fuel out of the block" : "fuel", inside, price) : 0;
        if (inside < use)
        {
            paid += Line(m, "fuel over the block, on the index", use - inside, Price((decimal)(c.AdderUsdPerUnit ?? 0) + (decimal)(c.IndexShare ?? 1) * IndexIn(m)));
        }

        var months = Math.Max(0, m - PaidMonth());
        var rate = c.Kind == ContractKind.PreBought ? (decimal)(c.MoneyRatePerYear ?? season.MoneyRatePerYear) : 0;
        if (rate > 0 && inside > 0 && months > 0)
        {
            lines.Add(new(m, FormattableString.Invariant($"money paid {months} months ahead at {100 * rate:0.##} % a year"), null, null, Cents(inside * price * rate * months / 12)));
        }

        return paid;
    }

    private long Steps(int m, decimal use)
    {
        var paid = 0L;
        for (var t = 0; t < c.Tiers.Count; t++)
        {
            var (from, to) = ((decimal)c.Tiers[t].FromUnits, t + 1 < c.Tiers.Count ? (decimal)c.Tiers[t + 1].FromUnits : decimal.MaxValue);
            if (Math.Min(use, to) > from)
            {
                paid += Line(m, $"step over {from:0.##} {c.Unit} a month", Math.Min(use, to) - from, (decimal)c.Tiers[t].AdderUsdPerUnit);
            }
        }

        return paid;
    }

    private void Charges(int m, decimal use, decimal share)
    {
        if (c.MonthlyFeeUsd is > 0 and var monthly)
        {
            Flat(m, "charge of the month", (decimal)monthly);
        }

        if (c.TankRentUsdPerYear is > 0 and var rent)
        {
            Flat(m, "tank rent, a twelfth", (decimal)rent / 12);
        }

        if (c.DeliveryFeeUsd is > 0 and var delivery && season.Months[m].Deliveries is > 0 and var count)
        {
            Line(m, share == 1 ? "deliveries" : "deliveries, by share", count * share, (decimal)delivery);
        }

        if (c.DemandUsdPerKw is > 0 and var demand && use > 0)
        {
            var peak = use * (decimal)HeatingValues.KwhPerUnit(season.Fuel, c.Unit, season.Heating)!.Value / HoursPerMonth / (decimal)(c.LoadFactor ?? ContractTerm.UsualLoadFactor);
            Line(m, "demand, kW by the load factor", Math.Round(peak, 1, MidpointRounding.AwayFromZero), (decimal)demand);
        }
    }

    private (decimal Own, long Credit) Leftover(decimal left)
    {
        if (left <= 0)
        {
            return (0, 0);
        }

        var price = PriceIn(0, true);
        switch (c.Leftover ?? LeftoverRule.Lost)
        {
            case LeftoverRule.BilledToShare:
                Line(null, $"left of the block and taken back, {100 * (c.BilledShare ?? 0):0.#} % billed", left, Price(price * (decimal)(c.BilledShare ?? 0)));
                return (0, 0);
            case LeftoverRule.CarriedAtOldPrice:
                Line(null, "left of the block, paid and still to be had", left, price);
                return (left, 0);
            case LeftoverRule.CarriedAtNewPrice:
                return (0, Line(null, "left of the block, its money stands with the dealer", left, price));
            default:
                Line(null, "left of the block and lost", left, price);
                return (0, 0);
        }
    }

    private decimal PriceIn(int m, bool needed)
    {
        if (c.OverIndexUsdPerUnit is { } over && c.Kind != ContractKind.Indexed)
        {
            var agreed = IndexIn(0) + (decimal)over;
            return Price(c.Kind is ContractKind.Fixed or ContractKind.PreBought ? agreed : Held(m, needed, agreed));
        }

        return Price(c.Kind is ContractKind.Fixed or ContractKind.PreBought ? (decimal)c.PriceUsdPerUnit!.Value : Held(m, needed, c.CapUsdPerUnit is { } cap && c.Kind != ContractKind.Indexed ? (decimal)cap : decimal.MaxValue));
    }

    private decimal Held(int m, bool needed, decimal high)
    {
        // a month without use needs no index
        if (!needed && index[m] is null)
        {
            return 0;
        }

        var low = c.Kind == ContractKind.Collared && c.FloorUsdPerUnit is { } floor ? Math.Min((decimal)floor, high) : decimal.MinValue;
        return Math.Min(high, Math.Max(low, (decimal)(c.AdderUsdPerUnit ?? 0) + (decimal)(c.IndexShare ?? 1) * IndexIn(m)));
    }

    private decimal IndexIn(int m) => index[m] ?? Missing(missing, m);

    private int PaidMonth() => c.BlockPaidMonth is { } m ? ContractTerm.SeasonMonth(m) : 0;

    private long Line(int? month, string what, decimal quantity, decimal price)
    {
        lines.Add(new(month, what, quantity, price, Cents(quantity * price)));
        return lines[^1].Cents;
    }

    private void Flat(int? month, string what, decimal usd) => lines.Add(new(month, what, null, null, Cents(usd)));
}
