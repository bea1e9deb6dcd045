using System.Globalization;
using FarmPortfolio.Engine;
using FarmPortfolio.Engine.Farms;
using FarmPortfolio.Engine.Retrofits;

namespace FarmPortfolio.Host.Loading;

/// <summary>The words growers write for shapes, coverings, fuels and days.</summary>
internal static class HouseWords
{
    private static readonly Dictionary<string, HouseShape> Shapes = new(StringComparer.Ordinal)
    {
        ["hoop"] = HouseShape.Hoop,
        ["half round"] = HouseShape.Hoop,
        ["gothic arch"] = HouseShape.GothicArch,
        ["gothic"] = HouseShape.GothicArch,
        ["gable"] = HouseShape.Gable,
        ["gutter connected"] = HouseShape.GutterConnected,
        ["range"] = HouseShape.GutterConnected,
    };

    private static readonly Dictionary<string, FuelKind> Fuels = new(StringComparer.Ordinal)
    {
        ["natural gas"] = FuelKind.NaturalGas,
        ["gas"] = FuelKind.NaturalGas,
        ["propane"] = FuelKind.Propane,
        ["lp gas"] = FuelKind.Propane,
        ["lpg"] = FuelKind.Propane,
        ["oil"] = FuelKind.FuelOil,
        ["no 2 oil"] = FuelKind.FuelOil,
        ["fuel oil"] = FuelKind.FuelOil,
        ["heating oil"] = FuelKind.FuelOil,
        ["electricity"] = FuelKind.Electricity,
        ["electric"] = FuelKind.Electricity,
        ["wood pellets"] = FuelKind.WoodPellets,
        ["pellets"] = FuelKind.WoodPellets,
    };

    private static readonly Dictionary<string, string> CoveringWords = new(StringComparer.Ordinal)
    {
        ["single"] = "singlefilm",
        ["single film"] = "singlefilm",
        ["double film"] = "doublefilm",
        ["double"] = "doublefilm",
        ["double inflated"] = "doublefilm",
        ["double film inflated"] = "doublefilm",
        ["infrared"] = "doublefilm-ir",
        ["double infrared"] = "doublefilm-ir",
        ["twin wall"] = "twinwall",
        ["twinwall polycarbonate"] = "twinwall",
        ["polycarbonate"] = "twinwall",
    };

    private static readonly string[] DayFormats = ["d MMM", "dd MMM", "MMM d", "MMM dd", "d MMMM", "MMMM d", "M/d", "MM/dd", "yyyy-MM-dd", "MM-dd"];

    /// <summary>Words for shapes, as an answer to what would be right.</summary>
    public const string ShapeNames = "hoop, Gothic arch, gable or gutter-connected";

    /// <summary>Words for fuels.</summary>
    public const string FuelNames = "natural gas, propane, oil, electricity or wood pellets";

    public static HouseShape? Shape(string cell) => Shapes.TryGetValue(HeadCell.Plain(cell), out var s) ? s : null;

    public static FuelKind? Fuel(string cell) => Fuels.TryGetValue(HeadCell.Plain(cell), out var f) ? f : null;

    /// <summary>Code of an entry of the catalogue by its code, its title or, for coverings, a word in use.</summary>
    public static string? Code(Catalogue catalogue, CatalogueKind kind, string cell)
    {
        var word = HeadCell.Plain(cell);
        if (kind == CatalogueKind.Covering && CoveringWords.TryGetValue(word, out var known))
        {
            return known;
        }

        return catalogue.Entries.Where(e => e.Kind == kind).FirstOrDefault(e => HeadCell.Plain(e.Code) == word || HeadCell.Plain(e.Title) == word)?.Code;
    }

    /// <summary>Codes of a kind, for the remedy.</summary>
    public static string Codes(Catalogue catalogue, CatalogueKind kind) => string.Join(", ", catalogue.Entries.Where(e => e.Kind == kind).Select(e => e.Code));

    /// <summary>A day that returns every year: 15 Feb, Feb 15, 2/15 (month first), 02-15 or a whole date.</summary>
    public static MonthDay? Day(string cell) =>
        DateTime.TryParseExact(cell.Trim(), DayFormats, CultureInfo.InvariantCulture, DateTimeStyles.AllowWhiteSpaces, out var day) ? new(day.Month, day.Day) : null;

    /// <summary>Names differ by this many letters at most when one may be meant for the other.</summary>
    public static bool Near(string left, string right)
    {
        if (Math.Abs(left.Length - right.Length) > 2 || Math.Min(left.Length, right.Length) < 4 || left == right || left.Where(char.IsDigit).SequenceEqual(right.Where(char.IsDigit)) is false)
        {
            return false;
        }

        var row = Enumerable.Range(0, right.Length + 1).ToArray();
        for (var i = 1; i <= left.Length; i++)
        {
            var corner = row[0];
            row[0] = i;
            for (var j = 1; j <= right.Length; j++)
            {
                var above = row[j];
                row[j] = Math.Min(Math.Min(row[j], row[j - 1]) + 1, corner + (left[i - 1] == right[j - 1] ? 0 : 1));
                corner = above;
            }
        }

        return row[^1] <= 2;
    }
}
