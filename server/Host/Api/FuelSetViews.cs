using FarmPortfolio.Engine.Scenarios;
using FarmPortfolio.Engine.Units;
using FarmPortfolio.Host.Storage.Items;
using GraphQL;

namespace FarmPortfolio.Host.Api;

/// <summary>A dated set of heating values, higher heating value.</summary>
[Name("HeatingValueSet")]
public sealed record HeatingValueSetView(string Name, int Year, string Source, bool InUse, double GasBtuPerCubicFoot, double PropaneBtuPerGallon, double OilBtuPerGallon, double PelletsBtuPerTon);

/// <summary>A dated set of emission factors, kg CO2 a MMBtu of fuel.</summary>
[Name("EmissionSet")]
public sealed record EmissionSetView(string Name, int Year, string Source, bool InUse, double GasKgPerMmbtu, double PropaneKgPerMmbtu, double OilKgPerMmbtu, double? WoodKgPerMmbtu);

/// <summary>Dated sets of fuels.</summary>
public sealed partial class Query
{
    /// <summary>Heating values the program knows, oldest first.</summary>
    public static IEnumerable<HeatingValueSetView> HeatingValueSets([FromServices] Register register) => FuelSets.HeatingValues.Select(s =>
        new HeatingValueSetView(s.Name, s.Year, s.Source, s == register.Heating, s.GasBtuPerCubicFoot, s.PropaneBtuPerGallon, s.OilBtuPerGallon, s.PelletsBtuPerTon));

    /// <summary>Emission factors the program knows, oldest first.</summary>
    public static IEnumerable<EmissionSetView> EmissionSets([FromServices] Register register) => FuelSets.Emissions.Select(s =>
        new EmissionSetView(s.Name, s.Year, s.Source, s == FuelSets.EmissionsNamed(register.SetFacts.EmissionSet), s.GasKgPerMmbtu, s.PropaneKgPerMmbtu, s.OilKgPerMmbtu, s.WoodKgPerMmbtu));
}

/// <summary>The dated sets of a study.</summary>
public sealed partial class StudyView
{
    /// <summary>The dated set of heating values that this study froze and turned prices, tickets and contracts into kWh by.</summary>
    public string HeatingValues => register.Studies.Inputs<ScenarioSetFacts>(register.Viewer, row, ItemKind.ScenarioSet) is { Count: > 0 } sets ? sets[^1].Facts.HeatingValues().Name : FuelSets.HeatingInUse.Name;

    /// <summary>The dated set of emission factors that this study froze and its CO2 is reckoned by, with its year.</summary>
    public string EmissionFactors => register.Studies.Inputs<ScenarioSetFacts>(register.Viewer, row, ItemKind.ScenarioSet) is { Count: > 0 } sets && FuelSets.EmissionsNamed(sets[^1].Facts.EmissionSet) is { } set
        ? $"{set.Name}, {set.Year}" : $"{FuelSets.EmissionsInUse.Name}, {FuelSets.EmissionsInUse.Year}";
}

/// <summary>A dated set of emission factors to reckon by from now on.</summary>
public sealed record EmissionSetInput([property: Id] string SetId, int ExpectedRevision, [property: Id] string RequestId, string Name);

/// <summary>A dated set of heating values to reckon by from now on.</summary>
public sealed record HeatingValueSetInput([property: Id] string SetId, int ExpectedRevision, [property: Id] string RequestId, string Name);

/// <summary>Choosing dated sets.</summary>
public sealed partial class Mutation
{
    /// <summary>Chooses the heating values that prices, tickets and contracts are turned into kWh by; studies that are done keep theirs.</summary>
    public static SavePayload UseHeatingValueSet([FromServices] Register register, HeatingValueSetInput input) => Use(
        register, input.SetId, input.ExpectedRevision, input.RequestId, $"heating values of {input.Name} are taken", f => f with { HeatingValueSet = input.Name == FuelSets.HeatingInUse.Name ? null : input.Name });

    /// <summary>Chooses the emission factors that studies to come reckon CO2 by; studies that are done keep theirs.</summary>
    public static SavePayload UseEmissionSet([FromServices] Register register, EmissionSetInput input) => Use(
        register, input.SetId, input.ExpectedRevision, input.RequestId, $"emission factors of {input.Name} are taken", f => f with { EmissionSet = input.Name == FuelSets.EmissionsInUse.Name ? null : input.Name });

    private static SavePayload Use(Register register, string setId, int expectedRevision, string requestId, string said, Func<ScenarioSetFacts, ScenarioSetFacts> choose)
    {
        if (register.Set is not { } set || set.Id != setId)
        {
            return Missing("set of assumptions");
        }

        var facts = choose(set.Facts);
        var faults = ScenarioChecks.Of(facts);
        return faults.Count > 0
            ? new(null, false, faults.Select(FaultView.Of))
            : Saved(register.Items.Save(register.Viewer, register.Coop.Id, said, requestId, [new(ItemKind.ScenarioSet, set.Id, expectedRevision, facts, set.Remarks)]));
    }
}
