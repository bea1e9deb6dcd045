namespace FarmPortfolio.Engine.Retrofits;

/// <summary>Retrofits that move the first heater to another fuel.</summary>
public static class FuelSwitch
{
    /// <summary>Code of the heat pump, whose efficiency follows the outside temperature.</summary>
    public const string HeatPump = "toheatpump";

    private static readonly Dictionary<string, FuelKind> Fuels = new(StringComparer.Ordinal)
    {
        ["togas"] = FuelKind.NaturalGas,
        ["topropane"] = FuelKind.Propane,
        ["topellets"] = FuelKind.WoodPellets,
        ["toresistance"] = FuelKind.Electricity,
        [HeatPump] = FuelKind.Electricity,
    };

    /// <summary>Codes of all of them.</summary>
    public static IReadOnlyCollection<string> Codes => Fuels.Keys;

    /// <summary>The switch among some parts.</summary>
    /// <param name="parts">Codes.</param>
    /// <returns>Its code, or null.</returns>
    public static string? Of(IEnumerable<string> parts) => parts.FirstOrDefault(Fuels.ContainsKey);

    /// <summary>The fuel a switch moves to.</summary>
    /// <param name="code">Code of a switch.</param>
    /// <returns>Fuel; null where the code is no switch.</returns>
    public static FuelKind? FuelOf(string code) => Fuels.TryGetValue(code, out var fuel) ? fuel : null;
}
