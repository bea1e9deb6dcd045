using FarmPortfolio.Engine.Farms;
using FarmPortfolio.Engine.HeatDemand;
using FarmPortfolio.Engine.Retrofits;
using FarmPortfolio.Engine.Scenarios;

namespace FarmPortfolio.Engine.Economics;

/// <summary>What an option costs a season besides fuel, in dollars of today.</summary>
internal static class RunningCosts
{
    internal static IReadOnlyList<CostLine> Of(
        HouseModel house, FarmFacts farm, OptionFacts option, ScenarioSetFacts set, MovableUses uses)
    {
        var o = option.Overrides;
        var weeks = uses.HeatedDays / 7.0;
        double Sum(string name) => option.Parts.Sum(code => house.Catalogue.Value(CatalogueKind.Retrofit, code, name));
        var lines = new List<CostLine>();
        void Add(string what, double usd, string? field, double? quantity = null, string? unit = null)
        {
            if (usd != 0 || (field is not null && option.Parts.Count > 0))
            {
                lines.Add(new(what, usd, field, quantity, unit));
            }
        }

        if (option.Parts.All(p => house.Catalogue.Value(CatalogueKind.Retrofit, p, "running") > 0))
        {
            return lines;
        }

        var watching = o?.WatchingHoursPerWeek ?? Sum("watchingHours");
        var wage = farm.WageUsdPerHour ?? set.WageUsdPerHour;
        Add("Watching", watching * weeks * wage, "watchingHoursPerWeek", watching, "h/week");
        Add("Upkeep", o?.UpkeepUsdPerYear ?? Sum("upkeepUsd"), "upkeepUsdPerYear");
        Add("Soap, tape and the like", o?.ConsumablesUsdPerYear ?? Sum("consumablesUsd"), "consumablesUsdPerYear");
        var kwh = o?.ElectricityKwhPerYear ?? option.Parts.Sum(code =>
            house.Catalogue.Value(CatalogueKind.Retrofit, code, "powerKw") * house.Catalogue.Value(CatalogueKind.Retrofit, code, "powerHoursPerNight") * uses.NightsByPart.GetValueOrDefault(code) +
            house.Catalogue.Value(CatalogueKind.Retrofit, code, "alwaysPowerKw") * 8760 + house.Catalogue.Value(CatalogueKind.Retrofit, code, "powerKwhPerYear"));
        Add("Power", kwh * (farm.ElectricityUsdPerKwh ?? set.ElectricityUsdPerKwh), "electricityKwhPerYear", kwh, "kWh");
        var crop = (house.Facts.CropUsdPerM2 ?? 0) * house.Geometry.FloorM2;
        var space = o?.SpaceLostShare ?? Sum("spaceLost");
        Add("Crop space lost", space * (house.Facts.SpaceWorth ?? 0) * crop, "spaceLostShare", space, "share");
        Add("Light lost", uses.LightLostShare * (house.Facts.YieldPerLight ?? 0) * crop, "lightLostShare", uses.LightLostShare, "share");
        if (house.Facts.ShadingUsdPerM2 is { } shading && shading > 0 && Sum("shadingPerFloor") > 0)
        {
            lines.Add(new("Summer shading, worth", -shading * house.Geometry.FloorM2));
        }

        return lines;
    }

    internal static IReadOnlyList<string> NotCounted(HouseFacts house, OptionFacts option)
    {
        if (option.Parts is ["openlater"])
        {
            return ["what the weeks before opening would have sold"];
        }

        var words = new List<string>();
        if (house.CropUsdPerM2 is null || house.YieldPerLight is null)
        {
            words.Add("light lost to the crop");
        }

        if (house.CropUsdPerM2 is null || house.SpaceWorth is null)
        {
            words.Add("crop space lost");
        }

        if (house.ShadingUsdPerM2 is null)
        {
            words.Add("worth of summer shading");
        }

        return words;
    }
}
