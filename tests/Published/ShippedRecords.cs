using System.Globalization;
using FarmPortfolio.Engine.Fuel;

namespace FarmPortfolio.Published;

/// <summary>The public monthly records that ship with the program (EIA, BLS; public domain).</summary>
internal static class ShippedRecords
{
    /// <summary>Reads a record, or the months of it between two.</summary>
    public static PriceRecord Of(string code, string? from = null, string? to = null)
    {
        var rows = File.ReadAllLines(Path.Combine(AppContext.BaseDirectory, "prices", code + ".csv")).Skip(1).Select(l => l.Split(','))
            .Where(c => (from is null || string.CompareOrdinal(c[0], from) >= 0) && (to is null || string.CompareOrdinal(c[0], to) <= 0)).ToList();
        return new(DateOnly.ParseExact(rows[0][0], "yyyy-MM", CultureInfo.InvariantCulture), [.. rows.Select(c => Math.Log(double.Parse(c[1], CultureInfo.InvariantCulture)))], 0, 0);
    }

    /// <summary>Its logs without the seasonal shape, unshrunk.</summary>
    public static double[] Plain(PriceRecord record) => PriceFit.Plain(record, PriceFit.Shape(record.LogPrices, record.FirstMonthOn.Month, shrink: false));
}
