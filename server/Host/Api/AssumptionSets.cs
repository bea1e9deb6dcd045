using FarmPortfolio.Engine.Scenarios;
using FarmPortfolio.Host.Storage.Items;
using GraphQL;

namespace FarmPortfolio.Host.Api;

/// <summary>A number of a set of assumptions, SI.</summary>
[Name("AssumptionValue")]
public sealed record AssumptionValueView(string Field, string Title, string Unit, double Value, double Default, double Low, double High, string Source);

/// <summary>A set of assumptions as it held at some time.</summary>
[Name("AssumptionSet")]
public sealed record AssumptionSetView(string Key, string Name, IEnumerable<AssumptionValueView> Values);

/// <summary>A number of the assumptions to save, SI.</summary>
public sealed record AssumptionInput([property: Id] string SetId, int ExpectedRevision, [property: Id] string RequestId, string Field, double Value);

/// <summary>Assumptions now and earlier.</summary>
public sealed partial class CoopView
{
    /// <summary>The set in use, its earlier revisions, newest first, and the defaults: any two can be laid side by side.</summary>
    public IEnumerable<AssumptionSetView> AssumptionSets
    {
        get
        {
            var defaults = new ScenarioSetFacts { FirstSeason = register.SetFacts.FirstSeason };
            AssumptionSetView View(string key, string name, ScenarioSetFacts facts) =>
                new(key, name, AssumptionKnobs.All.Select(k => new AssumptionValueView(k.Field, k.Title, k.Unit, k.Get(facts), k.Get(defaults), k.Low, k.High, k.Source)));
            var sets = new List<AssumptionSetView> { View("now", "in use now", register.SetFacts) };
            if (register.Set is { } set)
            {
                sets.AddRange(register.History.History(register.Viewer, set.Id, 20).Where(r => r.Revision != set.Revision && r.Facts is not null)
                    .Select(r => View($"revision-{r.Revision}", $"as of {r.AtUtc[..10]}: {r.Said}", CanonicalJson.Read<ScenarioSetFacts>(r.Facts!))));
            }

            return [.. sets, View("defaults", "the defaults", defaults)];
        }
    }
}

/// <summary>Assumptions one by one.</summary>
public sealed partial class Mutation
{
    /// <summary>Saves one number of the assumptions in use; the others stay as they are.</summary>
    public static SavePayload SaveAssumption([FromServices] Register register, AssumptionInput input)
    {
        if (register.Set is not { } set || set.Id != input.SetId || AssumptionKnobs.All.FirstOrDefault(k => k.Field == input.Field) is not { } knob)
        {
            return Missing("assumption");
        }

        if (!(input.Value >= knob.Low && input.Value <= knob.High))
        {
            return new(null, false, [new("OUT_OF_RANGE", knob.Field, $"{input.Value:0.####} is outside {knob.Low:0.####} to {knob.High:0.####} ({knob.Unit}).", "Check the unit, or give a figure within the range.", null, null)]);
        }

        var facts = knob.Set(set.Facts, input.Value);
        var faults = ScenarioChecks.Of(facts);
        return faults.Count > 0
            ? new(null, false, faults.Select(FaultView.Of))
            : Saved(register.Items.Save(register.Viewer, register.Coop.Id, $"{knob.Title} is changed", input.RequestId, [new(ItemKind.ScenarioSet, set.Id, input.ExpectedRevision, facts, set.Remarks)]));
    }
}
