using FarmPortfolio.Engine.Retrofits;

namespace FarmPortfolio.Host.Loading;

/// <summary>A row of a sheet of quotes: one retrofit on one house.</summary>
/// <param name="Line">Line of the sheet.</param>
/// <param name="Farm">Farm as written.</param>
/// <param name="House">House as written.</param>
/// <param name="RetrofitCode">Code of the retrofit.</param>
/// <param name="Parts">Cents by part of the quote, parts without money left out.</param>
/// <param name="Eligible">Whether a grant may count it.</param>
/// <param name="Supplier">Who quotes; null = not told.</param>
/// <param name="QuotedOn">Date of the quote.</param>
/// <param name="ValidUntilOn">Last day it holds; null = not told.</param>
/// <param name="Firmness">Firm, budget or catalogue.</param>
/// <param name="Note">Remark; null = none.</param>
public sealed record QuoteRow(
    int Line, string Farm, string House, string RetrofitCode, IReadOnlyList<(string Category, long Cents)> Parts, bool Eligible, string? Supplier, DateOnly QuotedOn, DateOnly? ValidUntilOn, QuoteFirmness Firmness, string? Note);

/// <summary>Sound rows of a sheet of quotes.</summary>
/// <param name="All">Rows in the sheet's order.</param>
public sealed record QuoteRows(IReadOnlyList<QuoteRow> All);

/// <summary>
/// Reads quotes from CSV or a pasted sheet, a row a house and retrofit, money by its parts. Heads are plain words in any order; how firm a quote is, is asked for and never guessed, for the spread
/// of the outlay goes by it.
/// </summary>
public static class QuoteSheet
{
    /// <summary>Most rows that one sheet brings in.</summary>
    internal const int MostRows = 20_000;

    /// <summary>Most dollars of a part of a quote.</summary>
    internal const double MostUsd = 1e7;

    /// <summary>Parts of a quote, as a quote's lines name them.</summary>
    internal static readonly string[] Categories = ["material", "labour", "freight", "electrical", "permits", "removal", "visit"];

    private const string Known = "farm, house, retrofit, quantity, unit price, material, labour, freight, electrical, permits, removal, once per visit, eligible, supplier, date, valid until, kind, note";

    private static readonly Dictionary<string, string> Columns = new(StringComparer.Ordinal)
    {
        ["farm"] = "farm",
        ["member"] = "farm",
        ["house"] = "house",
        ["retrofit"] = "retrofit",
        ["measure"] = "retrofit",
        ["quantity"] = "quantity",
        ["unit price"] = "unit price",
        ["material"] = "material",
        ["materials"] = "material",
        ["labour"] = "labour",
        ["labor"] = "labour",
        ["freight"] = "freight",
        ["electrical"] = "electrical",
        ["permits"] = "permits",
        ["permit"] = "permits",
        ["removal"] = "removal",
        ["once per visit"] = "visit",
        ["visit"] = "visit",
        ["eligible"] = "eligible",
        ["grant may count it"] = "eligible",
        ["supplier"] = "supplier",
        ["who quotes"] = "supplier",
        ["date"] = "date",
        ["quoted"] = "date",
        ["quoted on"] = "date",
        ["valid until"] = "until",
        ["holds until"] = "until",
        ["kind"] = "kind",
        ["firmness"] = "kind",
        ["note"] = "note",
        ["remark"] = "note",
        ["excluded"] = "note",
    };

    private static readonly string[] Needed = ["farm", "house", "retrofit", "date"];

    /// <summary>Reads a sheet.</summary>
    /// <param name="text">Text.</param>
    /// <param name="catalogue">Retrofits it may name.</param>
    /// <returns>The sound rows, null when there is no head or dates are in doubt, and the faults.</returns>
    public static Loaded<QuoteRows> Read(SourceText text, Catalogue catalogue)
    {
        var (faults, dates, found) = (new FaultList(text.File), new SlashDates(), new List<QuoteRow>());
        Dictionary<string, int>? at = null;
        var (rows, width) = (0, 0);
        foreach (var (line, cells) in TableRows.Of(text, faults))
        {
            if (at is null)
            {
                at = Head(cells, line, faults);
                if (at is not null)
                {
                    text.HeadFound();
                    width = cells.Length;
                }

                continue;
            }

            if (++rows > MostRows)
            {
                faults.Add("TOO_MANY_ROWS", null, FormattableString.Invariant($"The sheet has more than {MostRows:#,0} rows."), "Split it by farms.", line, 1);
                return new(null, rows, faults.All);
            }

            if (!SheetHead.TooLong(cells, width, line, faults) && new Row(cells, line, at, dates, faults).Quote(line, catalogue) is { } row)
            {
                found.Add(row);
            }
        }

        if (at is null && text.Refusal is null && faults.Count == 0)
        {
            faults.Add("NO_HEAD", null, "No head with farm, house, retrofit and date was found.", "Give a first row such as: farm, house, retrofit, material, labour, freight, supplier, date, valid until, kind.", 1, 1);
        }

        if (at is not null && rows == 0 && text.Refusal is null)
        {
            faults.Add("EMPTY", null, "The sheet has a head and no row.", "Give a row a house and retrofit under the head.");
        }

        return new(at is null || dates.InDoubt(faults) ? null : new(found), rows, faults.All) { Notes = dates.Note is { } taken ? [taken] : [] };
    }

    /// <summary>A sheet to fill in: the head and one made-up row.</summary>
    /// <returns>CSV text.</returns>
    public static string Template() =>
        "farm,house,retrofit,quantity,unit price,material,labour,freight,electrical,permits,removal,once per visit,eligible,supplier,date,valid until,kind,note\r\n"
        + "Example Farm,house 1,curtain,,,4200,1800,250,600,0,0,400,yes,an invented builder,2026-05-12,2026-08-31,firm,wiring to the house is there\r\n";

    private static Dictionary<string, int>? Head(string[] cells, int line, FaultList faults)
    {
        var (at, doubled) = (new Dictionary<string, int>(), new List<(string Name, int At)>());
        for (var i = 0; i < cells.Length; i++)
        {
            var name = HeadCell.Of(cells[i], u => u is "usd" or "$").Name;
            if (Columns.TryGetValue(name, out var column) && !at.TryAdd(column, i))
            {
                doubled.Add((name, i));
            }
        }

        if (!Needed.All(at.ContainsKey))
        {
            return null;
        }

        doubled.ForEach(d => SheetHead.Twice(d.Name, line, d.At, faults));
        SheetHead.Unknown([.. cells.Select((c, i) => (i, c)).Where(c => c.c.Length > 0 && !at.ContainsValue(c.i) && doubled.All(d => d.At != c.i))], Known, line, faults);
        return at;
    }

    private sealed class Row(string[] cells, int line, Dictionary<string, int> at, SlashDates dates, FaultList faults) : SheetRow(cells, line, at, dates, faults)
    {
        public QuoteRow? Quote(int line, Catalogue catalogue)
        {
            var (farm, house) = (Told("farm", "the farm as it stands among the farms"), Told("house", "the house as it stands on its farm's page"));
            if (house.IndexOfAny([';', '+', '&']) >= 0)
            {
                Wrong("SEVERAL", "house", $"\"{WeatherCells.Short(house)}\" names several houses.", "Give each house a row of its own, with its own share of the money.");
            }

            var named = Told("retrofit", $"one of {HouseWords.Codes(catalogue, CatalogueKind.Retrofit)}");
            var code = HouseWords.Code(catalogue, CatalogueKind.Retrofit, named);
            if (named.Length > 0 && code is null)
            {
                Wrong("UNKNOWN_CODE", "retrofit", $"There is no retrofit \"{WeatherCells.Short(named)}\" in the catalogue.", $"Write one of {HouseWords.Codes(catalogue, CatalogueKind.Retrofit)}.");
            }

            var (on, until) = (Day("date"), Day("until"));
            if (on is null && Cell("date").Length == 0)
            {
                Wrong("NO_DATE", "date", "The quote has no date.", "Give the day it was made, such as 2026-05-12.");
            }

            if (until < on)
            {
                Wrong("OUT_OF_ORDER", "until", "The quote ends before its date.", "Give a last day on or after the date of the quote.");
            }

            var parts = Categories.Select(c => (Category: c, Cents: c == "material" ? Material() : Money(c))).Where(p => p.Cents > 0).ToList();
            if (parts.Count == 0 && !IsWrong)
            {
                Wrong("NO_MONEY", "material", "The row has no money.", "Give material, labour, freight, electrical, permits, removal or once per visit in dollars; or a quantity and its unit price.");
            }

            var (eligible, firmness) = (Eligible(), Firmness());
            return IsWrong ? null : new(line, farm, house, code!, parts, eligible, Text("supplier"), on!.Value, until, firmness, Text("note"));
        }

        private string Told(string column, string right)
        {
            var cell = Cell(column);
            if (cell.Length == 0)
            {
                Wrong("EMPTY", column, $"The row names no {column}.", $"Write {right}.");
            }

            return cell;
        }

        private string? Text(string column) => Cell(column) is { Length: > 0 } text ? text : null;

        private long Money(string column)
        {
            var usd = Number(column) ?? 0;
            if (usd is < 0 or > MostUsd)
            {
                Wrong("OUT_OF_RANGE", column, FormattableString.Invariant($"${usd:#,0.##} is outside 0 to {MostUsd:#,0}."), "Give dollars, 0 or more; what is taken off a quote comes off the part it belongs to.");
                return 0;
            }

            return (long)Math.Round(usd * 100);
        }

        /// <summary>Material as a sum, or quantity x unit price; where both stand they are the same.</summary>
        private long Material()
        {
            var (sum, quantity, price) = (Money("material"), Number("quantity"), Number("unit price"));
            if (quantity is null || price is null)
            {
                if (price is not null || (quantity is not null && sum == 0))
                {
                    var lacks = price is null ? "unit price" : "quantity";
                    Wrong("EMPTY", lacks, $"The {lacks} is not told.", "Give quantity and unit price, or the sum under material.");
                }

                return sum;
            }

            var usd = quantity.Value * price.Value;
            if (!(usd is >= 0 and <= MostUsd))
            {
                Wrong("OUT_OF_RANGE", "unit price", FormattableString.Invariant($"{quantity} x ${price} is outside 0 to {MostUsd:#,0}."), "Give a quantity and a unit price of 0 or more.");
                return 0;
            }

            var product = (long)Math.Round(usd * 100);
            if (sum > 0 && Math.Abs(product - sum) > 1)
            {
                Wrong("DIFFERS", "material", FormattableString.Invariant($"{quantity} x ${price} is ${usd:#,0.00}, the sum says ${sum / 100.0:#,0.00}."), "Mend one of them, or take quantity and unit price out.");
            }

            return product;
        }

        private bool Eligible()
        {
            switch (Cell("eligible").ToLowerInvariant())
            {
                case "" or "yes" or "y" or "true" or "1":
                    return true;
                case "no" or "n" or "false" or "0":
                    return false;
                default:
                    Wrong("UNKNOWN_WORD", "eligible", $"\"{WeatherCells.Short(Cell("eligible"))}\" says neither yes nor no.", "Write yes where a grant may count the row, else no.");
                    return true;
            }
        }

        private QuoteFirmness Firmness()
        {
            switch (Cell("kind").ToLowerInvariant())
            {
                case "firm":
                    return QuoteFirmness.Firm;
                case "budget":
                    return QuoteFirmness.Budget;
                case "catalogue" or "catalog":
                    return QuoteFirmness.Catalogue;
                case "":
                    Wrong("EMPTY", "kind", "How firm the quote is, is not told; the spread of the outlay goes by it.", "Write firm, budget or catalogue in a column \"kind\".");
                    break;
                default:
                    Wrong("UNKNOWN_WORD", "kind", $"\"{WeatherCells.Short(Cell("kind"))}\" is no kind of quote.", "Write firm, budget or catalogue.");
                    break;
            }

            return QuoteFirmness.Budget;
        }
    }
}
