using FarmPortfolio.Engine;
using FarmPortfolio.Engine.Farms;
using FarmPortfolio.Engine.Units;
using FarmPortfolio.Engine.Weather;

namespace FarmPortfolio.Host.Loading;

/// <summary>Lines of a fuel record as a sheet tells them.</summary>
/// <param name="Entries">Sound rows in the sheet's order, each with its line.</param>
public sealed record FuelRows(IReadOnlyList<(int Line, FuelEntry Entry)> Entries);

/// <summary>
/// Reads delivery tickets, utility bills or totals of one tank or meter from CSV or a pasted sheet. Heads are plain words in any order; a row with one date is a delivery,
/// one with two a bill (at a meter) or a total (at a tank). A unit told nowhere is asked for. Degree days and K-factors go by <see cref="DealerSheet"/>.
/// </summary>
public static class FuelSheet
{
    /// <summary>Most rows of one tank or meter: a line a day for fifty years.</summary>
    internal const int MostRows = 20_000;

    /// <summary>Reads a sheet.</summary>
    /// <param name="text">Text.</param>
    /// <param name="fuel">Fuel of the tank or meter.</param>
    /// <param name="supply">Tank or meter.</param>
    /// <param name="unit">Unit of quantities without one; null = not said.</param>
    /// <param name="dealer">Takes degree days and K-factors; null = no weather to hold them against.</param>
    /// <returns>The sound rows, null when there is no head, and the faults.</returns>
    public static Loaded<FuelRows> Read(SourceText text, FuelKind fuel, SupplyKind supply, string? unit = null, DealerSheet? dealer = null)
    {
        dealer ??= new(new Dictionary<int, WeatherYear>());
        var (faults, dates) = (new FaultList(text.File), new SlashDates());
        var entries = new List<(int, FuelEntry)>();
        Dictionary<string, int>? at = null;
        var (rows, width) = (0, 0);
        foreach (var (line, cells) in TableRows.Of(text, faults))
        {
            if (at is null)
            {
                at = Head(cells, line, fuel, ref unit, faults);
                if (at is not null)
                {
                    text.HeadFound();
                    width = cells.Length;
                }
            }
            else
            {
                if (++rows > MostRows)
                {
                    faults.Add("TOO_MANY_ROWS", null, FormattableString.Invariant($"The sheet has more than {MostRows:#,0} rows, more than one tank or meter can have."), "Give the sheet of one tank or meter, and of the years that matter.", line, 1);
                    return new(null, rows, faults.All);
                }

                if (!SheetHead.TooLong(cells, width, line, faults) && new Row(cells, line, at, dates, faults).Entry(fuel, supply, unit, dealer) is { } entry)
                {
                    entries.Add((line, entry));
                }
            }
        }

        if (at is null && text.Refusal is null && faults.Count == 0)
        {
            faults.Add("NO_HEAD", null, "No head with a date and a quantity was found.", "Give a first row such as: date, quantity, unit, kind, total; or: from, to, quantity, unit, read kind, total.", 1, 1);
        }

        if (at is not null && rows == 0 && text.Refusal is null)
        {
            faults.Add("EMPTY", null, "The sheet has a head and no row.", "Give a row a delivery or bill under the head.");
        }

        return new(at is null || dates.InDoubt(faults) ? null : new(entries), rows, faults.All) { Notes = dates.Note is { } taken ? [.. dealer.Notes, taken] : dealer.Notes };
    }

    /// <summary>Dollars in whole cents; null stays null.</summary>
    internal static long? Cents(double? usd) => usd is { } v ? (long)Math.Round(v * 100) : null;

    private static Dictionary<string, int>? Head(string[] cells, int line, FuelKind fuel, ref string? unit, FaultList faults)
    {
        var (at, doubled) = (new Dictionary<string, int>(), new List<(string Name, int At)>());
        for (var i = 0; i < cells.Length; i++)
        {
            var head = HeadCell.Of(cells[i], u => FuelSheetWords.Unit(fuel, u) is not null);
            if (!FuelSheetWords.Columns.TryGetValue(head.Name, out var column))
            {
                continue;
            }

            if (!at.TryAdd(column, i))
            {
                doubled.Add((head.Name, i));
                continue;
            }

            unit = column == "quantity" ? FuelSheetWords.Unit(fuel, head.Unit ?? head.Name) ?? unit : unit;
        }

        if (!at.ContainsKey("quantity") && !at.ContainsKey("total") && !at.ContainsKey("k") || !at.ContainsKey("date") && !at.ContainsKey("to"))
        {
            return null;
        }

        doubled.ForEach(d => SheetHead.Twice(d.Name, line, d.At, faults));
        SheetHead.Unknown([.. cells.Select((c, i) => (i, c)).Where(c => c.c.Length > 0 && !at.ContainsValue(c.i) && doubled.All(d => d.At != c.i))], string.Join(", ", FuelSheetWords.Columns.DistinctBy(c => c.Value).Select(c => c.Key)), line, faults);

        return at;
    }

    private sealed class Row(string[] cells, int line, Dictionary<string, int> at, SlashDates dates, FaultList faults) : SheetRow(cells, line, at, dates, faults)
    {
        public FuelEntry? Entry(FuelKind fuel, SupplyKind supply, string? unit, DealerSheet dealer)
        {
            var (date, from, to) = (Day("date"), Day("from"), Day("to"));
            var quantity = Number("quantity");
            var (total, price, fees) = (Number("total"), Number("price"), Number("fees"));
            var read = Cell("read").ToLowerInvariant();
            if (!FuelSheetWords.Reads.TryGetValue(read, out var kind))
            {
                Wrong("UNKNOWN_WORD", "read", $"\"{Cell("read")}\" is no kind of fill or read.", "Write full, part or unknown; or actual, estimated or customer.");
            }

            var named = Cell("unit");
            var written = named.Length > 0 ? FuelSheetWords.Unit(fuel, named) : unit;
            if (named.Length > 0 && written is null)
            {
                Wrong("UNKNOWN_UNIT", "unit", $"\"{named}\" is no unit that this fuel is sold in.", $"Write one of {string.Join(", ", HeatingValues.UnitsOf(fuel))}.");
            }
            else if (written is null && quantity is not null)
            {
                Wrong("NO_UNIT", "quantity", "The quantity has no unit.", $"Add a column \"unit\", or say the unit of the sheet: {string.Join(", ", HeatingValues.UnitsOf(fuel))}.");
            }

            var last = to ?? date;
            if (last is null && !IsWrong)
            {
                Wrong("NO_DATE", "date", "The row has no date.", "Give the day of the delivery, or from and to of the bill.");
            }

            var (k, hdd, baseF) = (Number("k"), Number("hdd"), Number("base"));
            if (quantity is null && total is null && k is null && !IsWrong)
            {
                Wrong("NO_QUANTITY", "quantity", "The row has no quantity and no total.", "Give the quantity, or the money paid, or degree days with a K-factor.");
            }

            if (price < 0)
            {
                Wrong("OUT_OF_RANGE", "price", FormattableString.Invariant($"A price of {price} cannot be."), "Give dollars a unit as on the ticket; a credit note has its quantity below 0.");
            }

            if (IsWrong)
            {
                return null;
            }

            if (quantity is null && total is null)
            {
                var each = written ?? (fuel is FuelKind.Propane or FuelKind.FuelOil ? "gal" : null);
                if (each is null)
                {
                    Wrong("NO_UNIT", "k", "The unit of the K-factor is not told.", $"Add a column \"unit\", or say the unit of the sheet: {string.Join(", ", HeatingValues.UnitsOf(fuel))}.");
                    return null;
                }

                return dealer.Reckoned(new(fuel, from ?? (to is null ? null : date), last!.Value, k!.Value, hdd, baseF, each, Cell("note") is { Length: > 0 } said ? said : null), Wrong);
            }

            dealer.Measured(from, last!.Value, hdd, baseF, Notice);

            var of = to is null ? FuelEntryKind.Delivery : supply == SupplyKind.Meter ? FuelEntryKind.Bill : FuelEntryKind.Total;
            var (u, q) = (written ?? HeatingValues.UnitsOf(fuel)[0], quantity ?? 0);
            return new(of, to is null ? last!.Value : from ?? date ?? last!.Value, last!.Value, q, u, q * HeatingValues.KwhPerUnit(fuel, u)!.Value, Cents(total), kind, Number("before"), Number("after"), Cents(fees), null,
                price, Number("factor"), quantity is null, false, Day("issued"), Cell("note") is { Length: > 0 } note ? note : null);
        }
    }
}
