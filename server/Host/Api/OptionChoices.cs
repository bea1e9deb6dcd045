using FarmPortfolio.Engine;
using FarmPortfolio.Engine.HeatDemand;
using FarmPortfolio.Engine.Retrofits;
using FarmPortfolio.Host.Storage.Items;
using GraphQL;

namespace FarmPortfolio.Host.Api;

/// <summary>A retrofit that a house could have, or why it cannot.</summary>
/// <param name="Code">Code.</param>
/// <param name="Title">Plain name.</param>
/// <param name="Fits">Whether the house can have it.</param>
/// <param name="WhyNot">Why it cannot; null = it can.</param>
/// <param name="SwitchesTo">Fuel that a switch moves to; null = it is no switch.</param>
[Name("RetrofitChoice")]
public sealed record RetrofitChoiceView(string Code, string Title, bool Fits, string? WhyNot, FuelKind? SwitchesTo);

/// <summary>An option to study. A switch of fuel can name the tank or meter it moves to; none = the farm's first of that fuel, else the monthly index.</summary>
public sealed record OptionChoiceInput(IReadOnlyList<string> Parts, OptionTiming? Timing, [property: Id] string? SwitchSupplyGroupId = null);

/// <summary>The options of a house to save; own figures of those that stay are kept.</summary>
public sealed record SaveOptionSetInput([property: Id] string HouseId, int? ExpectedRevision, [property: Id] string RequestId, IReadOnlyList<OptionChoiceInput> Options, bool? CheckOnly);

/// <summary>What a house could have.</summary>
public sealed partial class HouseView
{
    /// <summary>Every retrofit of the catalogue, with why it does not fit where it does not.</summary>
    public IEnumerable<RetrofitChoiceView> RetrofitChoices =>
        model.Value.Model is not { } house ? [] : register.Catalogue.Entries.Where(e => e.Kind == CatalogueKind.Retrofit && e.Code != "none").Select(e =>
        {
            var faults = OptionChecks.Of(house, UsualOptions.Option([e.Code], OptionTiming.Now));
            return new RetrofitChoiceView(e.Code, e.Title, faults.Count == 0, faults.Count == 0 ? null : faults[0].Message, FuelSwitch.FuelOf(e.Code));
        });
}

/// <summary>The options studied for a house.</summary>
public sealed partial class Mutation
{
    /// <summary>Saves which options are studied for a house, or only checks them.</summary>
    public static SavePayload SaveOptionSet([FromServices] Register register, SaveOptionSetInput input)
    {
        if (!register.Houses.TryGetValue(input.HouseId, out var house) || register.Model(house).Model is not { } model)
        {
            return Missing("house");
        }

        var set = register.OptionSet(input.HouseId);
        var options = input.Options.Where(o => o.Parts.Count > 0).Select(o => (Option: UsualOptions.Option(o.Parts, o.Timing ?? OptionTiming.Now), To: o.SwitchSupplyGroupId))
            .Select(o => (o.Option, o.To, Own: set?.Facts.Options.FirstOrDefault(k => k.Key == o.Option.Key)?.Overrides))
            .Select(o => o.Option with { Overrides = o.To is null && o.Own is null ? null : (o.Own ?? new()) with { SwitchSupplyGroupId = o.To } }).ToList();
        var faults = options.SelectMany(o => OptionChecks.Of(model, o)).ToList();
        faults.AddRange(input.Options.Where(o => o.SwitchSupplyGroupId is { } id && !(FuelSwitch.Of(o.Parts) is { } code && register.Groups.TryGetValue(id, out var g) && g.Facts.FarmId == house.Facts.FarmId && g.Facts.Fuel == FuelSwitch.FuelOf(code)))
            .Select(_ => new Fault("SWITCH_SUPPLY", "switchSupplyGroupId", "The option moves to a tank or meter that is not the farm's, or gives another fuel.", "Choose one of the farm's with the new fuel, or none for the monthly index.")));
        faults.AddRange(options.GroupBy(o => o.Key).Where(g => g.Count() > 1).Select(g => new Fault("DOUBLED", "options", $"The option \"{g.Key}\" stands twice.", "Keep one of the two.")));
        if (faults.Count > 0 || input.CheckOnly == true)
        {
            return new(null, false, faults.Select(FaultView.Of));
        }

        return Saved(register.Items.Save(register.Viewer, register.Coop.Id, $"options of {house.Remarks.Name} are chosen", input.RequestId,
            [new(ItemKind.OptionSet, set?.Id, input.ExpectedRevision, new OptionSetFacts { HouseId = house.Id, Options = options }, set?.Remarks ?? new())]));
    }
}
