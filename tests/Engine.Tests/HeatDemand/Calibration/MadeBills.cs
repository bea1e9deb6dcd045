using FarmPortfolio.Engine.Farms;
using FarmPortfolio.Engine.HeatDemand;
using FarmPortfolio.Engine.HeatDemand.Calibration;
using FarmPortfolio.Engine.Scenarios;
using FarmPortfolio.Engine.Units;
using FarmPortfolio.Engine.Weather;

namespace FarmPortfolio.Engine.Tests.HeatDemand.Calibration;

/// <summary>Bills and tickets made from the program's own model with a known truth, and noise by counter (Philox).</summary>
internal static class MadeBills
{
    public static readonly IReadOnlyDictionary<int, WeatherYear> Winters = TestHouse.Winters.ToDictionary(y => y.Season);

    public static readonly HouseModel House = TestHouse.Model();

    public static readonly BehindTank[] Behind = [new("h", House)];

    public static readonly SupplyGroupFacts Meter = new() { FarmId = "f", Fuel = FuelKind.NaturalGas, Kind = SupplyKind.Meter };

    public static readonly SupplyGroupFacts Tank = new() { FarmId = "f", Fuel = FuelKind.Propane, Kind = SupplyKind.Tank, TankSizeL = 1000 * Us.GallonL };

    private static readonly Dictionary<int, double[]> Daily = DailyOf(House);

    /// <summary>Fuel that the model needs over whole days, kWh.</summary>
    public static double Modelled(DateOnly from, DateOnly to, Dictionary<int, double[]>? daily = null)
    {
        var sum = 0.0;
        for (var day = from; day <= to; day = day.AddDays(1))
        {
            sum += (daily ?? Daily)[SeasonCalendar.SeasonOf(day)][SeasonCalendar.DayIndex(day)];
        }

        return sum;
    }

    /// <summary>Bills of another house than described, its base use and noise as in <see cref="Bills"/>.</summary>
    public static FuelRecordFacts BillsOf(HouseModel truth, int months, double basePerDay, Func<int, double> noise, double rootDays) => Bills(months, 1, basePerDay, noise, rootDays, 0, DailyOf(truth));

    /// <summary>Bills with reads near the middle of each month.</summary>
    /// <param name="months">Months, from July 2011.</param>
    /// <param name="multiplier">True multiplier.</param>
    /// <param name="basePerDay">True base use, kWh a day.</param>
    /// <param name="noise">Standard normal of a bill.</param>
    /// <param name="rootDays">kWh of noise a root day.</param>
    /// <param name="share">Noise as a share of the bill.</param>
    /// <param name="daily">Fuel of another house day by day; null = <see cref="House"/>.</param>
    public static FuelRecordFacts Bills(int months, double multiplier, double basePerDay, Func<int, double> noise, double rootDays = 0, double share = 0, Dictionary<int, double[]>? daily = null)
    {
        var entries = new List<FuelEntry>();
        var read = new DateOnly(2011, 7, 16);
        for (var i = 0; i < months; i++)
        {
            var next = new DateOnly(2011, 7, 12).AddMonths(i + 1).AddDays(7 * i % 9);
            var days = next.DayNumber - read.DayNumber;
            var kwh = multiplier * Modelled(read.AddDays(1), next, daily) + basePerDay * days;
            kwh += noise(i) * (rootDays * Math.Sqrt(days) + share * kwh);
            entries.Add(new(FuelEntryKind.Bill, read.AddDays(1), next, kwh, "kWh", kwh, null, ReadKind.Actual));
            read = next;
        }

        return new() { SupplyGroupId = "g", Entries = entries };
    }

    /// <summary>A tank filled full whenever three fifths are gone, at least so many days apart.</summary>
    public static FuelRecordFacts Tickets(double multiplier, double basePerDay, ReadKind read = ReadKind.Full, int leastDays = 10)
    {
        var perGallon = HeatingValues.KwhPerUnit(FuelKind.Propane, "gal")!.Value;
        var entries = new List<FuelEntry> { new(FuelEntryKind.Delivery, new(2011, 9, 20), new(2011, 9, 20), 120, "gal", 0, null, read) };
        var (since, gone) = (new DateOnly(2011, 9, 20), 0.0);
        for (var day = since.AddDays(1); day < new DateOnly(2013, 6, 1); day = day.AddDays(1))
        {
            gone += (multiplier * Modelled(day, day) + basePerDay) / perGallon;
            if (gone > 480 && day.DayNumber - since.DayNumber >= leastDays)
            {
                entries.Add(new(FuelEntryKind.Delivery, day, day, gone, "gal", 0, null, read));
                (since, gone) = (day, 0);
            }
        }

        return new() { SupplyGroupId = "g", Entries = entries };
    }

    public static Func<int, double> Noise(int replicate, long seed = 20) => i => FarmPortfolio.Engine.Scenarios.Noise.Normal(seed, NoisePurpose.LossGroup, 1, replicate, i);

    private static Dictionary<int, double[]> DailyOf(HouseModel house) =>
        Winters.ToDictionary(w => w.Key, w => DailyHeat.Of(OptionModels.AsItStands(house), w.Value).Select(q => q / house.Heaters[0].Efficiency).ToArray());
}
