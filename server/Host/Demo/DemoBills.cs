using FarmPortfolio.Engine;
using FarmPortfolio.Engine.Farms;
using FarmPortfolio.Engine.Scenarios;
using FarmPortfolio.Engine.Units;
using FarmPortfolio.Engine.Weather;

namespace FarmPortfolio.Host.Demo;

/// <summary>Invented tickets and bills of two winters, made from the demo's own houses and weather with the scatter that real ones have.</summary>
internal static class DemoBills
{
    /// <summary>Seasons told.</summary>
    public static readonly int[] Seasons = [2021, 2022];

    /// <summary>Days of those seasons.</summary>
    public const int Days = 365 + 365;

    private const long Seed = 7;
    private static readonly DateOnly First = new(2021, 7, 1);

    /// <summary>Size of a farm's tank bank, gallons.</summary>
    public static double TankGallons(DemoFarm farm) => farm.Houses.Length > 2 ? 2000 : 1000;

    /// <summary>What else hangs on the tank or meter.</summary>
    public static IReadOnlyList<OtherUse> OtherUses(DemoFarm farm) => farm.DwellingKwhPerDay > 0 ? [new("dwelling")] : [];

    /// <summary>The record a farm kept.</summary>
    /// <param name="farm">Farm.</param>
    /// <param name="groupId">Its tank or meter.</param>
    /// <param name="unit">Unit of its fuel.</param>
    /// <param name="heatKwh">Fuel of its houses by day, kWh.</param>
    /// <param name="index">Delivered price of a month of a season, US dollars a unit, July = 0; null = not on record.</param>
    public static FuelRecordFacts Of(DemoFarm farm, string groupId, string unit, double[] heatKwh, Func<int, int, double?> index)
    {
        var kwh = HeatingValues.KwhPerUnit(farm.Fuel, unit)!.Value;
        var key = Noise.Key(farm.Name);
        // what people do moves the use by a few per cent from fortnight to fortnight
        var use = heatKwh.Select((q, d) => (q * Math.Exp(0.06 * Noise.Normal(Seed, NoisePurpose.LossGroup, key, d / 14, 1)) + farm.DwellingKwhPerDay) / kwh).ToArray();
        double Price(DateOnly day) => farm.FixedPrice ?? Invented(farm, index(SeasonCalendar.SeasonOf(day), SeasonCalendar.MonthIndex(day.Month)), day, key);
        var entries = farm.Records switch
        {
            DemoRecords.Bills => Bills(farm, unit, use, key, Price),
            DemoRecords.Totals => Seasons.Select((s, i) => Line(farm, FuelEntryKind.Total, new(s, 9, 1), new(s + 1, 6, 15), Math.Round(use.Skip(62 + 365 * i).Take(288).Sum()), unit, ReadKind.Unknown, Price)),
            _ => Tickets(farm, unit, use, Price),
        };
        return new() { SupplyGroupId = groupId, Entries = [.. entries], AutomaticDelivery = farm.Records == DemoRecords.Tickets ? true : null };
    }

    private static IEnumerable<FuelEntry> Bills(DemoFarm farm, string unit, double[] use, long key, Func<DateOnly, double> price)
    {
        var (from, carried) = (0, 0.0);
        for (var i = 0; i < 24 && from < Days; i++)
        {
            var to = Math.Min(Days - 1, First.AddMonths(i + 1).DayNumber - First.DayNumber + (int)(4 * Noise.Normal(Seed, NoisePurpose.Offset, key, i, 2)));
            if (to <= from)
            {
                continue;
            }

            var true1 = use.Skip(from).Take(to - from + 1).Sum() + carried;
            // the reader missed the house twice in the cold: what was guessed low comes with the next read
            var estimated = i is 7 or 18;
            var quantity = Math.Round(estimated ? 0.8 * true1 : true1, farm.Fuel == FuelKind.Electricity ? 0 : 1);
            carried = estimated ? true1 - quantity : 0;
            yield return Line(farm, FuelEntryKind.Bill, First.AddDays(from), First.AddDays(to), quantity, unit, estimated ? ReadKind.Estimated : ReadKind.Actual, price);
            from = to + 1;
        }
    }

    private static IEnumerable<FuelEntry> Tickets(DemoFarm farm, string unit, double[] use, Func<DateOnly, double> price)
    {
        var (size, gone, last, n) = (TankGallons(farm), 0.0, 0, 0);
        var loose = farm.Records == DemoRecords.LooseTickets;
        for (var d = 50; d < Days; d++)
        {
            gone += use[d];
            if (gone < 0.50 * size && !(n > 0 && d % 365 > 330 && d - last > 60 && gone > 0.1 * size) && n > 0)
            {
                continue;
            }

            var on = First.AddDays(d);
            var quantity = n == 0 ? Math.Round(0.3 * size) : Math.Round(gone, 1);
            yield return Line(farm, FuelEntryKind.Delivery, on, on, loose && n == 4 ? quantity * 10 : quantity, unit, loose ? ReadKind.Unknown : ReadKind.Full, price);
            (gone, last, n) = (0, d, n + 1);
        }
    }

    /// <summary>A dealer's price that follows the record with a margin of its own; where the record ends, a flat one.</summary>
    private static double Invented(DemoFarm farm, double? index, DateOnly day, long key) => index is { } usd
        ? Math.Round(usd * (1.02 + 0.01 * Noise.Normal(Seed, NoisePurpose.OutlayOwn, key, day.DayNumber, 0)), 3)
        : farm.Fuel switch { FuelKind.NaturalGas => 0.92, FuelKind.Propane => 2.35, FuelKind.FuelOil => 3.75, _ => 0.125 };

    private static FuelEntry Line(DemoFarm farm, FuelEntryKind kind, DateOnly from, DateOnly to, double quantity, string unit, ReadKind read, Func<DateOnly, double> price)
    {
        var usd = price(to);
        return new(kind, from, to, quantity, unit, quantity * HeatingValues.KwhPerUnit(farm.Fuel, unit)!.Value, (long)Math.Round(quantity * usd * 100), read, PriceUsdPerUnit: usd);
    }
}
