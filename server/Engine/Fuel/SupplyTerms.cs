using FarmPortfolio.Engine.Units;

namespace FarmPortfolio.Engine.Fuel;

/// <summary>
/// How a tank or meter pays, month by month over a horizon: its contracts in force, each on its share of the volume, and what they roll into.
/// What no contract covers pays the index. Dollars are nominal, energy is kWh of fuel on the higher heating value.
/// </summary>
public sealed class SupplyTerms
{
    private readonly ContractTerm[] terms;
    private readonly int[][] running;
    private readonly double factor;
    private readonly PaidMonth[] months;

    private SupplyTerms(ContractTerm[] terms, IReadOnlyList<PriceScatter> scatter, int[][] running, int seasons, double factor)
    {
        (this.terms, Scatter, this.running, this.factor, Seasons) = (terms, scatter, running, factor, seasons);
        IsPricedByMonth = terms.All(t => t.IsMonthly);
        IsMonthly = scatter.Count == 0 && IsPricedByMonth;
        var made = new Dictionary<string, PaidMonth>(StringComparer.Ordinal);
        months = new PaidMonth[12 * seasons];
        for (var m = 0; m < months.Length; m++)
        {
            var key = string.Join(' ', running.Select(r => r[m]));
            months[m] = made.TryGetValue(key, out var known) ? known : made[key] = Month(m);
        }
    }

    /// <summary>Seasons.</summary>
    public int Seasons { get; }

    /// <summary>Contracts in force: the length of what is carried between seasons.</summary>
    public int Parts => running.Length;

    /// <summary>Whether each month's price depends on nothing but that month's index and what own prices lie off their lines by: then <see cref="MonthPrices"/> tells it whatever the volume.</summary>
    public bool IsPricedByMonth { get; }

    /// <summary>What own prices lie off their lines by: drawn apart from the index, twelve months of each for <see cref="Season"/>.</summary>
    public IReadOnlyList<PriceScatter> Scatter { get; }

    /// <summary>Whether each month's price depends on nothing but that month's index: then a saving can be priced house by house with <see cref="PriceOf"/>.</summary>
    public bool IsMonthly { get; }

    /// <summary>The terms of a tank or meter.</summary>
    /// <param name="inForce">Contracts in force; empty = the index.</param>
    /// <param name="byId">Contracts by identifier, for what one rolls into; null = none is known.</param>
    /// <param name="fuel">Fuel.</param>
    /// <param name="standBy">Fuel that takes over when the supply is cut; null = none.</param>
    /// <param name="firstSeason">Year of the July of season 0.</param>
    /// <param name="seasons">Seasons, 1 or more.</param>
    /// <param name="moneyRatePerYear">Price of money from paying a block to using it where the contract tells none.</param>
    /// <param name="factor">Factor on every price and charge, 1 = as drawn; for a sensitivity.</param>
    /// <param name="basisOf">A contract's own price series told by the index; null = every contract follows the index itself.</param>
    /// <param name="values">Heating values that the contracts' units are turned into kWh by; null = those in use where nothing is chosen.</param>
    /// <returns>The terms, null when a fault stops them, and the faults.</returns>
    public static (SupplyTerms? Terms, IReadOnlyList<Fault> Faults) Of(
        IReadOnlyList<ContractFacts> inForce, Func<string, ContractFacts?>? byId, FuelKind fuel, FuelKind? standBy, int firstSeason, int seasons, double moneyRatePerYear = 0, double factor = 1,
        Func<ContractFacts, (SeriesBasis? Basis, Fault? Fault)>? basisOf = null, HeatingValueSet? values = null)
    {
        var faults = new List<Fault>(ContractChecks.Together(inForce));
        var facts = new List<ContractFacts>();
        var running = new List<int[]>();
        foreach (var contract in inForce)
        {
            running.Add(ContractChain.Of(contract, byId, firstSeason, seasons, facts, faults));
        }

        foreach (var contract in facts)
        {
            faults.AddRange(ContractChecks.Of(contract, fuel, standBy));
        }

        var bases = facts.Select(f => basisOf?.Invoke(f) ?? (SeriesBasis.Index, null)).ToList();
        faults.AddRange(bases.Select(b => b.Fault).OfType<Fault>());
        if (faults.Count > 0)
        {
            return (null, faults);
        }

        var scatter = new List<PriceScatter>();
        var terms = facts.Zip(bases, (f, b) => OwnIndices.Scattered(ContractTerm.Of(f, fuel, moneyRatePerYear, factor, b.Basis!, values), b.Basis!, scatter)).ToArray();
        return (new(terms, scatter, [.. running], seasons, factor), []);
    }

    /// <summary>The price of a month; meaningful where <see cref="IsMonthly"/>.</summary>
    /// <param name="month">Month from the July of season 0.</param>
    /// <returns>The price as a function of the index, delivery charges included.</returns>
    public PaidMonth PriceOf(int month) => months[month];

    /// <summary>The prices of a season; meaningful where <see cref="IsPricedByMonth"/>.</summary>
    /// <param name="season">Season from 0.</param>
    /// <param name="index">Index by month, July first, US dollars a kWh of fuel.</param>
    /// <param name="scatter">What own prices lie off their lines by, as for <see cref="SeasonUsd"/>.</param>
    /// <param name="usdPerKwh">Filled with twelve prices, delivery charges included.</param>
    public void MonthPrices(int season, ReadOnlySpan<double> index, ReadOnlySpan<double> scatter, Span<double> usdPerKwh)
    {
        for (var m = 0; m < 12; m++)
        {
            var (paid, rest) = (0.0, 1.0);
            for (var part = 0; part < running.Length; part++)
            {
                if (running[part][12 * season + m] is var number and >= 0)
                {
                    var term = terms[number];
                    var own = scatter.IsEmpty ? index[m] : OwnIndices.Of(term, index[m], scatter, m);
                    (paid, rest) = (paid + term.Weight * (term.PriceAt(own, own) + term.DeliveryUsdPerKwh), rest - term.Weight);
                }
            }

            usdPerKwh[m] = paid + factor * (rest < 1e-9 ? 0 : rest) * index[m];
        }
    }

    /// <summary>Charges of a season that do not depend on the volume.</summary>
    /// <param name="season">Season from 0.</param>
    /// <returns>US dollars.</returns>
    public double FeesUsd(int season)
    {
        var sum = 0.0;
        for (var part = 0; part < running.Length; part++)
        {
            for (var t = 0; t < terms.Length; t++)
            {
                var active = Active(part, t, season);
                sum += active == 0 ? 0 : active * terms[t].MonthlyFeeUsd + terms[t].SeasonFeeUsd + active * terms[t].RentUsd / 12;
            }
        }

        return sum;
    }

    /// <summary>Settles a season on the volumes of the tank or meter, whatever its terms, charges of <see cref="FeesUsd"/> included.</summary>
    /// <param name="season">Season from 0.</param>
    /// <param name="index">Index by month, July first, US dollars a kWh of fuel.</param>
    /// <param name="volumeKwh">Fuel used by month, kWh.</param>
    /// <param name="standByIndex">Price of the stand-by fuel by month, US dollars a kWh of it; empty = none.</param>
    /// <param name="carried">What is left from the season before, <see cref="Parts"/> long, all zero before season 0; left for the next.</param>
    /// <param name="scatter">What own prices lie off their lines by, twelve months of each of <see cref="Scatter"/>, US dollars a kWh; empty = they lie on them.</param>
    /// <returns>US dollars.</returns>
    public double SeasonUsd(
        int season, ReadOnlySpan<double> index, ReadOnlySpan<double> volumeKwh, ReadOnlySpan<double> standByIndex, Span<Carried> carried, ReadOnlySpan<double> scatter = default)
    {
        Span<double> monthUsd = stackalloc double[12];
        return Season(season, index, volumeKwh, standByIndex, carried, monthUsd, scatter).TotalUsd;
    }

    /// <summary>Settles a season and tells what each month and charge was.</summary>
    /// <param name="season">Season from 0.</param>
    /// <param name="index">Index by month, July first, US dollars a kWh of fuel.</param>
    /// <param name="volumeKwh">Fuel used by month, kWh.</param>
    /// <param name="standByIndex">Price of the stand-by fuel by month; empty = none.</param>
    /// <param name="carried">What is left from the season before; left for the next.</param>
    /// <param name="monthUsd">Filled with what each month's fuel costs, 12 long.</param>
    /// <param name="scatter">What own prices lie off their lines by, twelve months of each of <see cref="Scatter"/>, US dollars a kWh; empty = they lie on them.</param>
    /// <returns>The charges.</returns>
    public SeasonCharges Season(
        int season, ReadOnlySpan<double> index, ReadOnlySpan<double> volumeKwh, ReadOnlySpan<double> standByIndex, Span<Carried> carried, Span<double> monthUsd, ReadOnlySpan<double> scatter = default)
    {
        Span<double> own = stackalloc double[12];
        Span<double> volume = stackalloc double[12];
        Span<double> rest = stackalloc double[12];
        volumeKwh[..12].CopyTo(volume);
        monthUsd[..12].Clear();
        var standByUsd = standByIndex.Length > 0 ? CutSupply.Take(CutDays(season), volume, standByIndex) : 0;
        volume.CopyTo(rest);
        var charges = new SeasonCharges();
        for (var part = 0; part < running.Length; part++)
        {
            for (var t = 0; t < terms.Length; t++)
            {
                if (Active(part, t, season) is var active && active > 0)
                {
                    scoped var met = scatter.IsEmpty || terms[t].Scatter.Count == 0 ? index : OwnIndices.Of(terms[t], index, scatter, own);
                    charges += TermSettlement.Of(terms[t], running[part].AsSpan(12 * season, 12), t, active, met, volume, rest, ref carried[part], monthUsd);
                }
            }
        }

        var fuel = 0.0;
        for (var m = 0; m < 12; m++)
        {
            monthUsd[m] += factor * index[m] * rest[m];
            fuel += monthUsd[m];
        }

        return charges with { FuelUsd = fuel, StandByUsd = factor * standByUsd };
    }

    private PaidMonth Month(int month)
    {
        var (constant, slope, rest, held) = (0.0, 0.0, 1.0, new List<HeldPart>());
        foreach (var part in running.Where(r => r[month] >= 0))
        {
            var t = terms[part[month]];
            rest -= t.Weight;
            constant += t.Weight * t.DeliveryUsdPerKwh;
            if (t.Kind is ContractKind.Fixed or ContractKind.PreBought)
            {
                constant += t.Weight * t.Price;
            }
            else if (t.Kind == ContractKind.Indexed)
            {
                constant += t.Weight * t.Adder;
                slope += t.Weight * t.Share;
            }
            else
            {
                held.Add(new(t.Weight, t.Adder, t.Share, t.Low, t.High));
            }
        }

        return new(constant, slope + factor * (rest < 1e-9 ? 0 : rest), held);
    }

    private int Active(int part, int term, int season)
    {
        var active = 0;
        for (var m = 12 * season; m < 12 * season + 12; m++)
        {
            active += running[part][m] == term ? 1 : 0;
        }

        return active;
    }

    /// <summary>Days of a season on which the supply is cut: the most that a contract running in it tells.</summary>
    private double CutDays(int season)
    {
        var days = 0.0;
        for (var part = 0; part < running.Length; part++)
        {
            for (var t = 0; t < terms.Length; t++)
            {
                days = Math.Max(days, Active(part, t, season) > 0 ? terms[t].CutDays : 0);
            }
        }

        return days;
    }
}
