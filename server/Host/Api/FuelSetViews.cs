using FarmPortfolio.Engine.Units;
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
    public static IEnumerable<HeatingValueSetView> HeatingValueSets() => FuelSets.HeatingValues.Select(s =>
        new HeatingValueSetView(s.Name, s.Year, s.Source, s == FuelSets.HeatingInUse, s.GasBtuPerCubicFoot, s.PropaneBtuPerGallon, s.OilBtuPerGallon, s.PelletsBtuPerTon));

    /// <summary>Emission factors the program knows, oldest first.</summary>
    public static IEnumerable<EmissionSetView> EmissionSets([FromServices] Register register) => FuelSets.Emissions.Select(s =>
        new EmissionSetView(s.Name, s.Year, s.Source, s == FuelSets.EmissionsNamed(register.SetFacts.EmissionSet), s.GasKgPerMmbtu, s.PropaneKgPerMmbtu, s.OilKgPerMmbtu, s.WoodKgPerMmbtu));
}

/// <summary>The emission factors of a study.</summary>
public sealed partial class StudyView
{
    /// <summary>The dated set of emission factors that this study froze and its CO2 is reckoned by, with its year.</summary>
    public string EmissionFactors => register.Studies.Inputs<Engine.Scenarios.ScenarioSetFacts>(register.Viewer, row, Storage.Items.ItemKind.ScenarioSet) is { Count: > 0 } sets && FuelSets.EmissionsNamed(sets[^1].Facts.EmissionSet) is { } set
        ? $"{set.Name}, {set.Year}" : $"{FuelSets.EmissionsInUse.Name}, {FuelSets.EmissionsInUse.Year}";
}

/// <summary>A dated set of emission factors to reckon by from now on.</summary>
public sealed record EmissionSetInput([property: Id] string SetId, int ExpectedRevision, [property: Id] string RequestId, string Name);

/// <summary>Choosing dated sets.</summary>
public sealed partial class Mutation
{
    /// <summary>Chooses the emission factors that studies to come reckon CO2 by; studies that are done keep theirs.</summary>
    public static SavePayload UseEmissionSet([FromServices] Register register, EmissionSetInput input)
    {
        if (register.Set is not { } set || set.Id != input.SetId)
        {
            return Missing("set of assumptions");
        }

        var facts = set.Facts with { EmissionSet = input.Name == FuelSets.EmissionsInUse.Name ? null : input.Name };
        var faults = Engine.Scenarios.ScenarioChecks.Of(facts);
        return faults.Count > 0
            ? new(null, false, faults.Select(FaultView.Of))
            : Saved(register.Items.Save(register.Viewer, register.Coop.Id, $"emission factors of {input.Name} are taken", input.RequestId, [new(Storage.Items.ItemKind.ScenarioSet, set.Id, input.ExpectedRevision, facts, set.Remarks)]));
    }
}
