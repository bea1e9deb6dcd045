using FarmPortfolio.Engine;

namespace FarmPortfolio.Host.Loading;

/// <summary>What the words beside a price say: the unit it is for, dollars or cents, the fuel.</summary>
internal static class PriceWords
{
    private static readonly (string Word, string Unit)[] Units =
    [
        ("million btu", "MMBtu"), ("mmbtu", "MMBtu"), ("thousand cubic feet", "mcf"), ("mcf", "mcf"), ("hundred cubic feet", "ccf"), ("ccf", "ccf"), ("therm", "therm"), ("gallon", "gal"), ("gal", "gal"),
        ("kilowatthour", "kWh"), ("kilowatt hour", "kWh"), ("kwh", "kWh"), ("cubic metre", "m3"), ("cubic meter", "m3"), ("m3", "m3"), ("litre", "L"), ("liter", "L"), ("/l", "L"), ("pound", "lb"), ("/lb", "lb"), ("ton", "ton"),
    ];

    // too short to be looked for within words
    private static readonly (string Word, string Unit)[] WholeWords = [("l", "L"), ("lb", "lb"), ("lbs", "lb"), ("dth", "MMBtu"), ("dekatherm", "MMBtu")];

    private static readonly (string Word, FuelKind Fuel)[] Fuels =
    [
        ("propane", FuelKind.Propane), ("heating oil", FuelKind.FuelOil), ("fuel oil", FuelKind.FuelOil), ("no. 2", FuelKind.FuelOil), ("distillate", FuelKind.FuelOil), ("natural gas", FuelKind.NaturalGas), ("henry hub", FuelKind.NaturalGas),
        ("utility gas", FuelKind.NaturalGas), ("piped gas", FuelKind.NaturalGas), ("electric", FuelKind.Electricity), ("pellet", FuelKind.WoodPellets),
        ("apu000072511", FuelKind.FuelOil), ("apu000072620", FuelKind.NaturalGas), ("apu000072610", FuelKind.Electricity),
    ];

    /// <summary>The unit of a price and the factor to dollars; null where the words name none.</summary>
    internal static (string Unit, double ToUsd)? Unit(string? words)
    {
        var plain = (words ?? string.Empty).ToLowerInvariant().Replace('_', ' ');
        var cents = plain.Contains("cent", StringComparison.Ordinal) || plain.Contains('¢', StringComparison.Ordinal) || plain.StartsWith("c/", StringComparison.Ordinal);
        var whole = plain.Split([' ', '/', '(', ')', '$', ',', '.', '-'], StringSplitOptions.RemoveEmptyEntries);
        var unit = WholeWords.FirstOrDefault(u => whole.Contains(u.Word, StringComparer.Ordinal)).Unit ?? Units.FirstOrDefault(u => plain.Contains(u.Word, StringComparison.Ordinal)).Unit;
        return unit is null ? null : (unit, cents ? 0.01 : 1);
    }

    /// <summary>The units that are known, as they are told where another is met.</summary>
    internal static string Known => "gallon, litre, pound, therm, hundred or thousand cubic feet, cubic metre, million Btu, kWh or ton";

    /// <summary>The fuel the words name; null where they name none.</summary>
    internal static FuelKind? Fuel(string? words)
    {
        var found = Array.FindIndex(Fuels, f => (words ?? string.Empty).Replace('_', ' ').Contains(f.Word, StringComparison.OrdinalIgnoreCase));
        return found < 0 ? null : Fuels[found].Fuel;
    }
}
