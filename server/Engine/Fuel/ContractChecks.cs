using FarmPortfolio.Engine.Units;

namespace FarmPortfolio.Engine.Fuel;

/// <summary>What of a contract cannot be.</summary>
public static class ContractChecks
{
    private const double Least = 1e-9;

    /// <summary>Dearest price a million Btu that is taken for one, US dollars: some eight times the dearest retail power; above it dollars were meant as cents, or another unit. Common practice, no source.</summary>
    private const double MostUsdPerMmbtu = 400;

    /// <summary>All that is wrong with one contract.</summary>
    /// <param name="contract">Contract.</param>
    /// <param name="fuel">Fuel of its tank or meter.</param>
    /// <param name="standBy">Fuel that takes over when the supply is cut; null = none told.</param>
    /// <returns>Faults by field; empty = usable.</returns>
    public static IReadOnlyList<Fault> Of(ContractFacts contract, FuelKind fuel, FuelKind? standBy = null)
    {
        var faults = new List<Fault>();
        if (HeatingValues.KwhPerUnit(fuel, contract.Unit) is { } kwh)
        {
            Dearest("priceUsdPerUnit", contract.PriceUsdPerUnit, "price", kwh, contract.Unit, faults);
            Dearest("capUsdPerUnit", contract.CapUsdPerUnit, "cap", kwh, contract.Unit, faults);
            Dearest("floorUsdPerUnit", contract.FloorUsdPerUnit, "floor", kwh, contract.Unit, faults);
        }
        else
        {
            faults.Add(new("UNKNOWN_UNIT", "unit", $"{fuel} is not sold by the {contract.Unit}.", $"Give the contract's prices by the {string.Join(" or ", HeatingValues.UnitsOf(fuel))}."));
        }

        Prices(contract, faults);
        if (contract.StartsOn is { } from && contract.EndsOn is { } to && to < from)
        {
            faults.Add(new("ENDS_BEFORE_IT_STARTS", "endsOn", $"The contract ends on {to:yyyy-MM-dd}, before it starts on {from:yyyy-MM-dd}.", "Give a last day after the first."));
        }

        Volumes(contract, faults);
        Range("volumeShare", contract.VolumeShare, Least, 1, "share of the volume", faults);
        Range("indexShare", contract.IndexShare, 0.3, 1.5, "share b of the index", faults);
        Range("adderUsdPerUnit", contract.AdderUsdPerUnit, -1000, 1000, "adder a", faults);
        Range("scatterUsdPerUnit", contract.ScatterUsdPerUnit, 0, 1000, "spread about the index", faults);
        if (contract.ScatterUsdPerUnit > 0 && contract.Kind is ContractKind.Fixed or ContractKind.PreBought)
        {
            faults.Add(new("SCATTER", "scatterUsdPerUnit", $"A {Name(contract.Kind)} price was given a spread about the index.", "Leave it empty: the price is agreed."));
        }

        Range("loadFactor", contract.LoadFactor, 0.01, 1, "load factor", faults);
        Range("moneyRatePerYear", contract.MoneyRatePerYear, 0, 1, "price of money a year", faults);
        Range("interruptedDays", contract.InterruptedDays, 0, 120, "number of days without supply", faults);
        if (contract.InterruptedDays > 0 && (standBy is null || standBy == fuel))
        {
            faults.Add(new("NO_STAND_BY", "interruptedDays", "The supply is cut on some days and no other fuel takes over.", "Tell the tank's or meter's stand-by fuel, or set the days to 0."));
        }

        if (contract.DemandUsdPerKw > 0 && fuel != FuelKind.Electricity)
        {
            faults.Add(new("DEMAND_CHARGE", "demandUsdPerKw", $"A demand charge was given for {fuel}.", "Demand charges belong to electricity; leave it empty."));
        }

        return faults;
    }

    /// <summary>What is wrong with the contracts in force of one tank or meter together.</summary>
    /// <param name="contracts">Contracts in force.</param>
    /// <returns>Faults; empty = usable.</returns>
    public static IReadOnlyList<Fault> Together(IReadOnlyList<ContractFacts> contracts)
    {
        static int Month(DateOnly day) => 12 * day.Year + day.Month - 1;
        var spans = contracts.Select(c => (
            From: c.StartsOn is { } s ? Month(s) : int.MinValue, To: c.EndsOn is { } e && c.RollsIntoContractId is null ? Month(e) : int.MaxValue, Share: c.VolumeShare ?? 1)).ToList();
        foreach (var from in spans.Select(s => s.From).Distinct().Order())
        {
            var running = spans.Where(s => s.From <= from && from <= s.To).ToList();
            var sum = running.Sum(s => s.Share);
            if (sum > 1 + 1e-9)
            {
                var when = from == int.MinValue ? "together" : $"in {new DateOnly(from / 12, from % 12 + 1, 1):yyyy-MM}";
                return [new("SHARES", "volumeShare", $"The shares of the {running.Count} contracts in force {when} add up to {100 * sum:0.#} % of the volume.",
                    "Lower them to 100 % or less together, or end one in the month before the next starts and let it roll into none: contracts are settled by whole months, and what no contract covers pays the index.")];
            }
        }

        return [];
    }

    /// <summary>What is wrong with a price that is told alone: cents for dollars, or another unit.</summary>
    /// <param name="field">Field of the fault.</param>
    /// <param name="usdPerUnit">Price, US dollars a unit.</param>
    /// <param name="kwhPerUnit">kWh in a unit.</param>
    /// <param name="unit">Unit.</param>
    /// <returns>The fault; null = such a price can be.</returns>
    public static Fault? TooDear(string field, double usdPerUnit, double kwhPerUnit, string unit)
    {
        var faults = new List<Fault>();
        Dearest(field, usdPerUnit, "price", kwhPerUnit, unit, faults);
        return faults.FirstOrDefault();
    }

    private static void Dearest(string field, double? usdPerUnit, string what, double kwhPerUnit, string unit, List<Fault> faults)
    {
        var most = MostUsdPerMmbtu * kwhPerUnit / Us.MmbtuKwh;
        if (usdPerUnit is { } usd && usd > most)
        {
            faults.Add(new("OUT_OF_RANGE", field, FormattableString.Invariant($"A {what} of {ShortFigure.Of(usd, "#,0.####")} dollars a {unit} cannot be."), FormattableString.Invariant($"Give dollars, not cents, a {unit}; at most {most:#,0.#}.")));
        }
    }

    private static void Prices(ContractFacts c, List<Fault> faults)
    {
        var anew = c.OverIndexUsdPerUnit is not null;
        if (c.Kind is ContractKind.Fixed or ContractKind.PreBought && !anew && c.PriceUsdPerUnit is not > 0)
        {
            faults.Add(new("NO_PRICE", "priceUsdPerUnit", $"A {Name(c.Kind)} contract needs its price.", "Give the price a unit, above 0, or what it is over the index of July."));
        }

        if (c.Kind is ContractKind.Capped or ContractKind.Collared && !anew && c.CapUsdPerUnit is not > 0)
        {
            faults.Add(new("NO_CAP", "capUsdPerUnit", $"A {Name(c.Kind)} contract needs its cap.", "Give the cap a unit, above 0, or what it is over the index of July."));
        }

        if (c.Kind == ContractKind.Collared && c.FloorUsdPerUnit is not > 0)
        {
            faults.Add(new("NO_FLOOR", "floorUsdPerUnit", "A collared contract needs its floor.", "Give the floor a unit, above 0, or choose a capped contract."));
        }

        if (c.CapUsdPerUnit is { } cap && c.FloorUsdPerUnit is { } floor && cap < floor)
        {
            faults.Add(new("CAP_BELOW_FLOOR", "capUsdPerUnit", $"The cap of {cap:0.####} is below the floor of {floor:0.####}.", "Give a cap above the floor."));
        }

        if (c.Kind == ContractKind.PreBought && c.BlockUnits is not > 0)
        {
            faults.Add(new("NO_BLOCK", "blockUnits", "A pre-bought contract needs the quantity bought before the season.", $"Give the block in {c.Unit}, above 0, or choose a fixed price."));
        }

        if (c.Leftover == LeftoverRule.BilledToShare && c.BilledShare is null)
        {
            faults.Add(new("NO_SHARE", "billedShare", "What is left of the block is taken back but for a share, and the share is not told.", "Give the share billed, 0 to 100 %."));
        }

        Range("billedShare", c.BilledShare, 0, 1, "share billed", faults);
        Range("blockPaidMonth", c.BlockPaidMonth, 1, 12, "month in which the block is paid", faults);
    }

    private static void Volumes(ContractFacts c, List<Fault> faults)
    {
        foreach (var (field, value, what) in new[]
        {
            ("priceUsdPerUnit", c.PriceUsdPerUnit, "price"), ("capUsdPerUnit", c.CapUsdPerUnit, "cap"), ("floorUsdPerUnit", c.FloorUsdPerUnit, "floor"),
            ("blockUnits", c.BlockUnits, "block"), ("minimumTakeUnits", c.MinimumTakeUnits, "minimum take"), ("monthlyFeeUsd", c.MonthlyFeeUsd, "monthly fee"),
            ("seasonFeeUsd", c.SeasonFeeUsd, "fee a season"), ("deliveryFeeUsd", c.DeliveryFeeUsd, "fee a delivery"), ("tankRentUsdPerYear", c.TankRentUsdPerYear, "tank rent"),
            ("demandUsdPerKw", c.DemandUsdPerKw, "demand charge"),
        })
        {
            if (value is { } v && !(v >= 0 && v < 1e9))
            {
                faults.Add(new("NEGATIVE", field, $"The {what} is {v:0.####}.", $"Give a {what} of 0 or more."));
            }
        }

        if (c.UnitsPerDelivery is { } d && !(d > 0 && d < 1e9))
        {
            faults.Add(new("NEGATIVE", "unitsPerDelivery", $"A delivery of {d:0.####} {c.Unit} was given.", "Give a quantity above 0."));
        }

        for (var i = 0; i < c.Tiers.Count; i++)
        {
            if (!(c.Tiers[i].FromUnits >= 0) || (i > 0 && !(c.Tiers[i].FromUnits > c.Tiers[i - 1].FromUnits)) || !double.IsFinite(c.Tiers[i].AdderUsdPerUnit))
            {
                faults.Add(new("STEPS", "tiers", $"Step {i + 1} starts at {c.Tiers[i].FromUnits:0.####} {c.Unit} a month.", "Give the steps lowest first, each above the one before, from 0 up."));
            }
        }
    }

    private static void Range(string field, double? value, double low, double high, string what, List<Fault> faults)
    {
        if (value is { } v && !(v >= low && v <= high))
        {
            faults.Add(new("OUT_OF_RANGE", field, $"The {what} of {ShortFigure.Of(v, "0.####")} is outside {low:0.####} to {high:0.####}.", $"Give a {what} between {low:0.####} and {high:0.####}."));
        }
    }

    private static string Name(ContractKind kind) => kind switch { ContractKind.PreBought => "pre-bought", ContractKind.Fixed => "fixed", ContractKind.Capped => "capped", ContractKind.Collared => "collared", _ => "indexed" };
}
