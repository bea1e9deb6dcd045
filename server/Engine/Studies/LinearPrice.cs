using FarmPortfolio.Engine.Fuel;
using FarmPortfolio.Engine.Units;

namespace FarmPortfolio.Engine.Studies;

/// <summary>
/// What a supply group pays a kWh of fuel where the bill is linear in the volume: a + b x index, or a fixed price while it runs and the index before and after,
/// on its share of the volume. Every house behind the group pays the same, so a saving can be priced house by house.
/// </summary>
internal readonly struct LinearPrice
{
    private readonly double adder;
    private readonly double share;
    private readonly double fixedUsd;
    private readonly double fixedShare;
    private readonly int firstFixed;
    private readonly int lastFixed;

    private LinearPrice(ContractFacts? contract, double kwhPerUnit, double unitsPerDelivery, int firstSeason, double factor)
    {
        var first = 12 * firstSeason + 6;
        var delivery = contract?.DeliveryFeeUsd is { } fee ? fee / (contract.UnitsPerDelivery ?? unitsPerDelivery) : 0;
        adder = factor * ((contract?.AdderUsdPerUnit ?? 0) + delivery) / kwhPerUnit;
        share = factor * (contract?.IndexShare ?? 1);
        fixedUsd = factor * ((contract?.PriceUsdPerUnit ?? 0) + delivery) / kwhPerUnit;
        var isFixed = contract is { Kind: ContractKind.Fixed };
        fixedShare = isFixed ? contract!.VolumeShare ?? 1 : 0;
        firstFixed = isFixed && contract!.StartsOn is { } from ? 12 * from.Year + from.Month - 1 - first : int.MinValue;
        lastFixed = !isFixed ? int.MinValue : contract!.EndsOn is { } end ? 12 * end.Year + end.Month - 1 - first : int.MaxValue;
        SeasonFeesUsd = factor * (12 * (contract?.MonthlyFeeUsd ?? 0) + (contract?.SeasonFeeUsd ?? 0) + (contract?.TankRentUsdPerYear ?? 0));
    }

    /// <summary>Charges of a season that do not depend on the volume, US dollars.</summary>
    public double SeasonFeesUsd { get; }

    /// <summary>The price under a contract.</summary>
    /// <param name="contract">Contract in force; null = the index.</param>
    /// <param name="fuel">Fuel.</param>
    /// <param name="firstSeason">Year of the July of season 0.</param>
    /// <param name="factor">Factor on every price, 1 = as drawn; for a sensitivity.</param>
    /// <returns>The price, or null with the fault that stops it.</returns>
    public static (LinearPrice? Price, Fault? Fault) Of(ContractFacts? contract, FuelKind fuel, int firstSeason, double factor = 1)
    {
        if (contract is null)
        {
            return (new(null, 1, 1, firstSeason, factor), null);
        }

        if (HeatingValues.KwhPerUnit(fuel, contract.Unit) is not { } kwh)
        {
            return (null, new("UNKNOWN_UNIT", "unit", $"{fuel} is not sold by the {contract.Unit}.", $"Give the contract's prices by the {string.Join(" or ", HeatingValues.UnitsOf(fuel))}."));
        }

        if (contract.Kind is not (ContractKind.Indexed or ContractKind.Fixed))
        {
            return (null, Refused($"A {contract.Kind} contract"));
        }

        if (contract.Kind == ContractKind.Fixed && contract.PriceUsdPerUnit is not > 0)
        {
            return (null, new("NO_PRICE", "priceUsdPerUnit", "A fixed contract needs its price.", "Give the price a unit, above 0."));
        }

        var bent = contract.Kind == ContractKind.Fixed && contract.BlockUnits is not null ? "A fixed price for a block of fuel"
            : contract.MinimumTakeUnits > 0 ? "A minimum take"
            : contract.Tiers.Count > 0 ? "A price by steps of volume"
            : contract.DemandUsdPerKw > 0 ? "A demand charge"
            : contract.InterruptedDays > 0 ? "An interruptible supply" : null;
        return bent is null ? (new(contract, kwh, 250 * HeatingValues.KwhPerUnit(FuelKind.Propane, "gal")!.Value / kwh, firstSeason, factor), null) : (null, Refused(bent));
    }

    /// <summary>The prices of a replicate, in the layout of <see cref="WinterOrder.Index"/>.</summary>
    /// <param name="order">The replicate.</param>
    /// <param name="index">Index of the fuel in that layout.</param>
    /// <param name="months">Months wanted, July = 0.</param>
    /// <param name="paid">Filled in those months, US dollars a kWh of fuel.</param>
    public void Lay(WinterOrder order, double[] index, int[] months, double[] paid)
    {
        foreach (var g in order.Groups)
        {
            foreach (var m in months)
            {
                var month = 12 * g.Season + m;
                var isFixed = month >= firstFixed && month <= lastFixed;
                var (constant, slope) = isFixed ? (fixedShare * fixedUsd + (1 - fixedShare) * adder, (1 - fixedShare) * share) : (adder, share);
                Rows.Line(constant, slope, index.AsSpan(12 * g.From + m * g.Count, g.Count), paid.AsSpan(12 * g.From + m * g.Count, g.Count));
            }
        }
    }

    private static Fault Refused(string what) => new("CONTRACT_KIND", "contract", $"{what} cannot be priced yet.", "Enter it as indexed or fixed; other kinds are refused rather than guessed.");
}
