using FarmPortfolio.Engine.HeatDemand;
using FarmPortfolio.Engine.Retrofits;
using FarmPortfolio.Host.Storage.Items;
using GraphQL;

namespace FarmPortfolio.Host.Api;

/// <summary>One own figure of an option to save; no value = back to the catalogue's. Money in US dollars, shares 0 to 1.</summary>
public sealed record OptionFigureInput([property: Id] string HouseId, string Key, int ExpectedRevision, [property: Id] string RequestId, string Field, double? Value);

/// <summary>What an option's own figures are.</summary>
public sealed partial class OptionView
{
    /// <summary>Fields whose figure is the house's own, not the catalogue's.</summary>
    public IEnumerable<string> OwnFigures => option.Overrides is { } o
        ? new (string Field, object? Value)[]
        {
            ("outlayUsd", o.OutlayCents), ("upkeepUsdPerYear", o.UpkeepUsdPerYear), ("watchingHoursPerWeek", o.WatchingHoursPerWeek), ("consumablesUsdPerYear", o.ConsumablesUsdPerYear),
            ("electricityKwhPerYear", o.ElectricityKwhPerYear), ("spaceLostShare", o.SpaceLostShare), ("lightLostShare", o.LightLostShare), ("lifeYears", o.LifeYears),
        }.Where(f => f.Value is not null).Select(f => f.Field)
        : [];

    /// <summary>Life of the whole, years.</summary>
    public double? LifeYears => costs.Value?.LifeYears;
}

/// <summary>Own figures of options.</summary>
public sealed partial class Mutation
{
    /// <summary>Saves one own figure of an option; the others stay as they are.</summary>
    public static SavePayload SaveOptionFigure([FromServices] Register register, OptionFigureInput input)
    {
        if (register.OptionSet(input.HouseId) is not { } set || !register.Houses.TryGetValue(input.HouseId, out var house) || set.Facts.Options.FirstOrDefault(o => o.Key == input.Key) is not { } option)
        {
            return Missing("option");
        }

        var (o, value) = (option.Overrides ?? new(), input.Value);
        OptionOverrides? next = input.Field switch
        {
            "outlayUsd" => o with { OutlayCents = value is { } usd ? (long)Math.Round(usd * 100) : null },
            "upkeepUsdPerYear" => o with { UpkeepUsdPerYear = value },
            "watchingHoursPerWeek" => o with { WatchingHoursPerWeek = value },
            "consumablesUsdPerYear" => o with { ConsumablesUsdPerYear = value },
            "electricityKwhPerYear" => o with { ElectricityKwhPerYear = value },
            "spaceLostShare" => o with { SpaceLostShare = value },
            "lightLostShare" => o with { LightLostShare = value },
            "lifeYears" => o with { LifeYears = value },
            _ => null,
        };
        if (next is null)
        {
            return new(null, false, [new("UNKNOWN_FIELD", "field", $"An option has no figure \"{input.Field}\".", "Name one of those that the page shows.", null, null)]);
        }

        var changed = option with { Overrides = next == new OptionOverrides() ? null : next };
        var faults = register.Model(house).Model is { } model ? OptionChecks.Of(model, changed) : [];
        return faults.Count > 0
            ? new(null, false, faults.Select(FaultView.Of))
            : Saved(register.Items.Save(register.Viewer, register.Coop.Id, $"{input.Key} of {house.Remarks.Name} takes {(value is null ? "the catalogue's figure" : "a figure of its own")}: {input.Field}", input.RequestId,
                [new(ItemKind.OptionSet, set.Id, input.ExpectedRevision, set.Facts with { Options = [.. set.Facts.Options.Select(x => x.Key == input.Key ? changed : x)] }, set.Remarks)]));
    }
}
