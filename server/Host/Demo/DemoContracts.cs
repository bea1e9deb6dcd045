using FarmPortfolio.Engine;
using FarmPortfolio.Engine.Fuel;
using FarmPortfolio.Host.Storage.Items;

namespace FarmPortfolio.Host.Demo;

/// <summary>How the demo's farms pay for their fuel, and what they were offered.</summary>
internal static class DemoContracts
{
    /// <summary>Contracts of a farm's tank or meter.</summary>
    /// <param name="number">Number of the farm.</param>
    /// <param name="farm">Farm.</param>
    /// <param name="groupId">Its tank or meter.</param>
    /// <param name="unit">Unit of its fuel.</param>
    public static IEnumerable<ItemToSave> Of(int number, DemoFarm farm, string groupId, string unit)
    {
        var index = new ContractFacts { SupplyGroupId = groupId, Kind = ContractKind.Indexed, Unit = unit };
        ItemToSave Item(ContractFacts facts, string name, string suffix = "") => new(ItemKind.Contract, $"ct_demo{number:00}{suffix}", null, facts, new(name));
        yield return farm.Name switch
        {
            "Ivy Landing" => Item(index with { Kind = ContractKind.PreBought, PriceUsdPerUnit = 2.39, OverIndexUsdPerUnit = -0.05, BlockUnits = 6000, BlockPaidMonth = 8, Leftover = LeftoverRule.CarriedAtNewPrice }, "6,000 gal pre-bought each August"),
            "Marsh End" => Item(index with { Kind = ContractKind.Capped, CapUsdPerUnit = 2.95, OverIndexUsdPerUnit = 0.45, SeasonFeeUsd = 600, DeliveryFeeUsd = 12 }, "index, capped"),
            _ when farm.FixedPrice is { } price => Item(index with { Kind = ContractKind.Fixed, PriceUsdPerUnit = price, EndsOn = new DateOnly(2028, 6, 30), MonthlyFeeUsd = Fee(farm) }, "fixed to June 2028"),
            _ => Item(index with { MonthlyFeeUsd = Fee(farm) }, "monthly index"),
        };
        if (farm.Records == DemoRecords.Tickets)
        {
            var offer = index with { Kind = ContractKind.Capped, Standing = ContractStanding.Offered, OverIndexUsdPerUnit = 0.25, SeasonFeeUsd = 450 };
            yield return Item(offer, "cap, 25 cents over July", "cap");
            yield return Item(offer with { Kind = ContractKind.PreBought, OverIndexUsdPerUnit = 0.05, SeasonFeeUsd = null, BlockUnits = 4000, BlockPaidMonth = 8, Leftover = LeftoverRule.CarriedAtNewPrice }, "4,000 gal paid in August", "pre");
        }

        if (farm.Name == "Alder Reach")
        {
            yield return Item(index with { Kind = ContractKind.Fixed, Standing = ContractStanding.Offered, PriceUsdPerUnit = 2.65, BlockUnits = 12_000, EndsOn = new DateOnly(2027, 6, 30) }, "one winter at $2.65", "o");
        }
    }

    private static double? Fee(DemoFarm farm) => farm.Fuel is FuelKind.NaturalGas or FuelKind.Electricity ? 35 : null;
}
