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
    public static IEnumerable<EmissionSetView> EmissionSets() => FuelSets.Emissions.Select(s =>
        new EmissionSetView(s.Name, s.Year, s.Source, s == FuelSets.EmissionsInUse, s.GasKgPerMmbtu, s.PropaneKgPerMmbtu, s.OilKgPerMmbtu, s.WoodKgPerMmbtu));
}
