using FarmPortfolio.Engine;
using FarmPortfolio.Engine.HeatDemand;
using FarmPortfolio.Engine.Retrofits;
using FarmPortfolio.Host.Storage.Items;
using GraphQL;

namespace FarmPortfolio.Host.Api;

/// <summary>A retrofit that a house could have, or why it cannot.</summary>
[Name("RetrofitChoice")]
public sealed record RetrofitChoiceView(string Code, string Title, bool Fits, string? WhyNot);

/// <summary>An option to study.</summary>
public sealed record OptionChoiceInput(IReadOnlyList<string> Parts, OptionTiming? Timing);

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
            return new RetrofitChoiceView(e.Code, e.Title, faults.Count == 0, faults.Count == 0 ? null : faults[0].Message);
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
        var options = input.Options.Where(o => o.Parts.Count > 0).Select(o => UsualOptions.Option(o.Parts, o.Timing ?? OptionTiming.Now))
            .Select(o => o with { Overrides = set?.Facts.Options.FirstOrDefault(k => k.Key == o.Key)?.Overrides }).ToList();
        var faults = options.SelectMany(o => OptionChecks.Of(model, o)).ToList();
        faults.AddRange(options.GroupBy(o => o.Key).Where(g => g.Count() > 1).Select(g => new Fault("DOUBLED", "options", $"The option \"{g.Key}\" stands twice.", "Keep one of the two.")));
        if (faults.Count > 0 || input.CheckOnly == true)
        {
            return new(null, false, faults.Select(FaultView.Of));
        }

        return Saved(register.Items.Save(register.Viewer, register.Coop.Id, $"options of {house.Remarks.Name} are chosen", input.RequestId,
            [new(ItemKind.OptionSet, set?.Id, input.ExpectedRevision, new OptionSetFacts { HouseId = house.Id, Options = options }, set?.Remarks ?? new())]));
    }
}
