using FarmPortfolio.Engine;
using FarmPortfolio.Engine.Farms;
using FarmPortfolio.Engine.Units;
using FarmPortfolio.Engine.Weather;
using FarmPortfolio.Host.Storage.Items;

namespace FarmPortfolio.Host.Loading;

/// <summary>
/// A winter's fuel that a sheet of houses tells: the rows of one tank or meter are added up and become its fuel record, the same single total that the nine questions keep.
/// A row that tells none adds none, so the whole use of a tank may stand on one of its houses.
/// </summary>
/// <param name="known">What is there.</param>
/// <param name="firstSeason">First season of the co-op's assumptions; the last winter is the one before it.</param>
/// <param name="file">Name of the file, for the faults.</param>
internal sealed class UsedFuel(KnownFarms known, int firstSeason, string? file)
{
    // one film kept at 20 C the year round where winters are hardest burns some 2,000 kWh a square metre, a few weeks of keeping frost out some 20; what lies well outside is a slip of the unit or of a nought: common practice, no source
    private const double LeastKwhPerM2 = 5;
    private const double MostKwhPerM2 = 4000;
    private readonly HashSet<string> recorded = [.. known.Recorded];
    private readonly Dictionary<string, Sum> sums = [];

    /// <summary>The fuel record of one season's total.</summary>
    /// <param name="groupId">Tank or meter.</param>
    /// <param name="season">Year of its July.</param>
    /// <param name="isLast">Whether it is the last winter, which names the record.</param>
    /// <param name="quantity">Quantity in <paramref name="unit"/>.</param>
    /// <param name="unit">Unit.</param>
    /// <param name="kwhPerUnit">kWh in one.</param>
    /// <param name="file">File it comes from.</param>
    /// <param name="line">Line it comes from.</param>
    /// <returns>What to save.</returns>
    public static ItemToSave Record(string groupId, int season, bool isLast, double quantity, string unit, double kwhPerUnit, string? file = null, int? line = null) =>
        new(ItemKind.FuelRecord, null, null, new FuelRecordFacts
        {
            SupplyGroupId = groupId,
            Entries = [new(FuelEntryKind.Total, SeasonCalendar.FirstDay(season), SeasonCalendar.FirstDay(season + 1).AddDays(-1), quantity, unit, quantity * kwhPerUnit)],
        }, new(isLast ? "last winter" : $"winter {SeasonCalendar.Name(season)}"), file, line);

    /// <summary>Takes what a sound row tells.</summary>
    /// <param name="row">Row.</param>
    /// <param name="groupId">Its tank or meter.</param>
    /// <param name="fuel">Fuel in it.</param>
    /// <param name="today">Today.</param>
    /// <returns>Why it cannot stand; null = taken, or nothing told.</returns>
    public Fault? Take(HouseRow row, string groupId, FuelKind fuel, DateOnly today)
    {
        if (row.Used is not { } told)
        {
            return null;
        }

        Fault Bad(string code, string message, string remedy) => new(code, "used last winter", message, remedy + " The row is left out.", file, row.Line, told.Column);
        if (recorded.Contains(groupId))
        {
            return Bad("ALREADY_THERE", "Its tank or meter has a fuel record already.", "Leave the use empty; add it to that record.");
        }

        if (FuelSheetWords.Unit(fuel, told.Unit) is not { } unit)
        {
            return Bad("UNKNOWN_UNIT", $"{fuel} is not sold by the \"{told.Unit}\".", $"Give it in one of {string.Join(", ", HeatingValues.UnitsOf(fuel))}, or mend the fuel.");
        }

        var season = told.Season ?? firstSeason - 1;
        if (told.Season is not null && SeasonCalendar.FirstDay(season + 1) > today)
        {
            return Bad("IN_FUTURE", $"The winter {SeasonCalendar.Name(season)} counts to 30 June {season + 1}; today is {today:yyyy-MM-dd}.", "Give the use of a winter that is over.");
        }

        if (!sums.TryGetValue(groupId, out var sum))
        {
            sums[groupId] = new(fuel, unit, season, told.Quantity, row.Line, told.Column);
            return null;
        }

        if (sum.Unit != unit)
        {
            return Bad("TWO_UNITS", $"The row in line {sum.Line} tells the same tank or meter in {sum.Unit}, this one in {unit}.", "Give all houses of one tank or meter in one unit.");
        }

        if (sum.Season != season)
        {
            return Bad("TWO_WINTERS", $"The row in line {sum.Line} tells the same tank or meter for {SeasonCalendar.Name(sum.Season)}, this one for {SeasonCalendar.Name(season)}.", "Give all houses of one tank or meter for one winter; more winters go in on its page.");
        }

        sums[groupId] = sum with { Quantity = sum.Quantity + told.Quantity };
        return null;
    }

    /// <summary>The records of what was taken, and what is asked about: a use that the floor behind the tank or meter cannot have burned is not kept.</summary>
    /// <param name="items">What the sheet adds.</param>
    /// <returns>Records to save, and faults.</returns>
    public (IReadOnlyList<ItemToSave> Records, IReadOnlyList<Fault> Faults) Records(IReadOnlyList<ItemToSave> items)
    {
        var (records, faults) = (new List<ItemToSave>(), new List<Fault>());
        var floors = known.Houses.Select(h => h.Facts).Concat(items.Select(i => i.Facts).OfType<HouseFacts>())
            .SelectMany(h => h.Supplies, (h, s) => (s.SupplyGroupId, M2: h.Bays * h.WidthM * h.LengthM)).ToLookup(h => h.SupplyGroupId, h => h.M2);
        foreach (var (groupId, sum) in sums)
        {
            var kwh = HeatingValues.KwhPerUnit(sum.Fuel, sum.Unit)!.Value;
            var floorM2 = floors[groupId].Sum();
            var perM2 = sum.Quantity * kwh / floorM2;
            if (perM2 is < LeastKwhPerM2 or > MostKwhPerM2)
            {
                faults.Add(new("ABSURD_USE", "used last winter", FormattableString.Invariant($"{sum.Quantity:#,0.##} {sum.Unit} over {floorM2:#,0} m2 ({floorM2 / Us.SquareFootM2:#,0} sq ft) of floor is {perM2:#,0.##} kWh of fuel a square metre; houses burn between {LeastKwhPerM2:0} and {MostKwhPerM2:#,0}."),
                    "Mend the quantity or its unit. With the good rows alone the houses come in without it.", file, sum.Line, sum.Column));
                continue;
            }

            records.Add(Record(groupId, sum.Season, sum.Season == firstSeason - 1, sum.Quantity, sum.Unit, kwh, file, sum.Line));
        }

        sums.Clear();
        return (records, faults);
    }

    private sealed record Sum(FuelKind Fuel, string Unit, int Season, double Quantity, int Line, int? Column);
}
