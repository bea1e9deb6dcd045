using FarmPortfolio.Engine;
using FarmPortfolio.Engine.Farms;
using FarmPortfolio.Engine.Units;

namespace FarmPortfolio.Host.Loading;

/// <summary>Words of sheets of tickets and bills: heads of columns, kinds of fill and read, units.</summary>
internal static class FuelSheetWords
{
    /// <summary>Column meant by a head in small letters.</summary>
    internal static readonly Dictionary<string, string> Columns = new()
    {
        ["date"] = "date",
        ["delivered"] = "date",
        ["delivery date"] = "date",
        ["from"] = "from",
        ["read date from"] = "from",
        ["start"] = "from",
        ["to"] = "to",
        ["read date to"] = "to",
        ["end"] = "to",
        ["read date"] = "to",
        ["quantity"] = "quantity",
        ["gallons"] = "quantity",
        ["amount"] = "quantity",
        ["use"] = "quantity",
        ["usage"] = "quantity",
        ["therms"] = "quantity",
        ["unit"] = "unit",
        ["kind"] = "read",
        ["fill"] = "read",
        ["read"] = "read",
        ["read kind"] = "read",
        ["price"] = "price",
        ["unit price"] = "price",
        ["fees"] = "fees",
        ["fixed charge"] = "fees",
        ["total"] = "total",
        ["cost"] = "total",
        ["gauge before"] = "before",
        ["gauge % before"] = "before",
        ["gauge after"] = "after",
        ["gauge % after"] = "after",
        ["therm factor"] = "factor",
        ["therms per ccf"] = "factor",
        ["issued"] = "issued",
        ["bill date"] = "issued",
        ["degree days"] = "hdd",
        ["hdd"] = "hdd",
        ["degree days since last fill"] = "hdd",
        ["hdd since last fill"] = "hdd",
        ["k"] = "k",
        ["k factor"] = "k",
        ["kfactor"] = "k",
        ["base"] = "base",
        ["base temperature"] = "base",
        ["note"] = "note",
        ["remark"] = "note",
    };

    /// <summary>Kind of fill or read meant by a word in small letters.</summary>
    internal static readonly Dictionary<string, ReadKind> Reads = new()
    {
        ["full"] = ReadKind.Full,
        ["part"] = ReadKind.Part,
        ["partial"] = ReadKind.Part,
        ["unknown"] = ReadKind.Unknown,
        [""] = ReadKind.Unknown,
        ["actual"] = ReadKind.Actual,
        ["estimated"] = ReadKind.Estimated,
        ["estimate"] = ReadKind.Estimated,
        ["customer"] = ReadKind.Customer,
    };

    /// <summary>A unit as the program writes it; null where the fuel is not sold in it.</summary>
    internal static string? Unit(FuelKind fuel, string word)
    {
        var plain = word.Trim().TrimEnd('.').ToLowerInvariant() switch
        {
            "gallon" or "gallons" or "gals" => "gal",
            "litre" or "litres" or "liter" or "liters" or "l" => "L",
            "lbs" or "pound" or "pounds" => "lb",
            "therms" or "th" => "therm",
            "m³" => "m3",
            "kwh" => "kWh",
            "mmbtu" => "MMBtu",
            "tons" => "ton",
            var other => other,
        };
        return HeatingValues.KwhPerUnit(fuel, plain) is null ? null : plain;
    }
}
