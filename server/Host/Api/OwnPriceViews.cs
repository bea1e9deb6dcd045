using FarmPortfolio.Engine.Fuel;
using FarmPortfolio.Engine.HeatDemand.Calibration;
using GraphQL;

namespace FarmPortfolio.Host.Api;

/// <summary>A line a + b x index through the tickets.</summary>
[Name("TicketLine")]
public sealed record TicketLineView(int Count, double AdderUsdPerUnit, double IndexShare, double SdUsdPerUnit, double IndexShareSe, double R2)
{
    internal static TicketLineView? Of(StraightLine? line) => line is null ? null : new(line.Count, line.A, line.B, line.Sd, line.BSe, line.R2);
}

/// <summary>A priced ticket beside the index of its month; index null = not on record.</summary>
[Name("PricedTicket")]
public sealed record PricedTicketView(string Month, double UsdPerUnit, double? IndexUsdPerUnit);

/// <summary>How the farm's own delivered price follows the index; adder and share null = the tickets do not tell it.</summary>
[Name("OwnPrice")]
public sealed record OwnPriceView(
    string Unit, string IndexName, int Tickets, int Winters, int WithoutIndex, TicketLineView? SameMonth, TicketLineView? MonthBefore, double? MeanOverUsdPerUnit, double? MeanOverSdUsdPerUnit, double? AdderUsdPerUnit,
    double? IndexShare, double? ScatterUsdPerUnit, string Verdict, IEnumerable<FaultView> Faults, IEnumerable<PricedTicketView> Points);

/// <summary>A price series to choose.</summary>
[Name("SeriesChoice")]
public sealed record SeriesChoiceView([property: Id] string Id, string Name);

/// <summary>The farm's own price.</summary>
public sealed partial class SupplyGroupView
{
    /// <summary>How its tickets and bills follow the index. Null where it has no record.</summary>
    public OwnPriceView? OwnPrice
    {
        get
        {
            if (Record is not { Facts.Entries.Count: > 0 } record)
            {
                return null;
            }

            var unit = PastVolumes.Of(item.Facts, record.Facts, [], new Dictionary<int, Engine.Weather.WeatherYear>(), register.Heating).Unit;
            var seasons = new Dictionary<int, IReadOnlyList<decimal?>>();
            double? At(DateOnly month)
            {
                var (season, m) = month.Month >= 7 ? (month.Year, month.Month - 7) : (month.Year - 1, month.Month + 5);
                seasons[season] = seasons.GetValueOrDefault(season) ?? Index(item.Facts.Fuel, unit, season, null);
                return (double?)seasons[season][m];
            }

            var points = PricedTickets.Of(item.Facts, record.Facts, unit, register.Heating);
            var own = TicketPrice.Of(points, unit, At);
            return new(
                unit, register.PricesInUse.TryGetValue(item.Facts.Fuel, out var id) ? register.Prices[id].Remarks.Name ?? "the record in use" : "no record of this fuel", own.Tickets, own.Winters, own.WithoutIndex,
                TicketLineView.Of(own.SameMonth), TicketLineView.Of(own.MonthBefore), own.MeanOver, own.MeanOverSd, own.Adder, own.Share, own.Scatter, own.Verdict, own.Faults.Select(FaultView.Of),
                points.Select(p => new PricedTicketView(p.Month.ToString("yyyy-MM", System.Globalization.CultureInfo.InvariantCulture), p.UsdPerUnit, At(p.Month))));
        }
    }

    /// <summary>Price series of its fuel that a contract can follow.</summary>
    public IEnumerable<SeriesChoiceView> SeriesChoices => register.Prices.Values.Where(p => p.Facts.Fuel == item.Facts.Fuel).OrderBy(p => p.Id, StringComparer.Ordinal).Select(p => new SeriesChoiceView(p.Id, p.Remarks.Name ?? p.Id));
}
