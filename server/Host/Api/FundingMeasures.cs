using FarmPortfolio.Engine.Funding;
using GraphQL;

namespace FarmPortfolio.Host.Api;

/// <summary>Where an option stands under a measure.</summary>
[Name("MeasurePlace")]
public sealed record MeasurePlaceView([property: Id] string OptionId, string Title, int Rank, bool Funded);

/// <summary>What the same money buys by one of the measures; means over all futures, a season. Who enters and leaves is told against the measure of the round.</summary>
[Name("MeasureOrder")]
public sealed record MeasureOrderView(Merit Merit, int FundedTotal, double GrantUsd, double SavingUsd, double WorstTenthUsd, double HeatSavedKwh, double Co2SavedKg, IEnumerable<MeasurePlaceView> Enter, IEnumerable<MeasurePlaceView> Leave)
{
    private readonly Func<int, int, IEnumerable<MeasurePlaceView>> places = (_, _) => [];

    /// <summary>The order with its places.</summary>
    internal MeasureOrderView(MeasureOrder order, IEnumerable<MeasurePlaceView> enter, IEnumerable<MeasurePlaceView> leave, Func<int, int, IEnumerable<MeasurePlaceView>> places)
        : this(order.Merit, order.Places.Count(p => p.Funded), order.GrantUsd, order.SavingUsd, order.WorstTenthUsd, order.HeatSavedKwh, order.Co2SavedKg, enter, leave) => this.places = places;

    /// <summary>Places, funded first: so many, of those after a rank where one is told.</summary>
    public IEnumerable<MeasurePlaceView> Places(int first = 50, int afterRank = 0) => places(first, afterRank);
}

/// <summary>The order beside the orders by the other measures.</summary>
public sealed partial class FundingOrderView
{
    /// <summary>Measure of the round.</summary>
    public Merit Merit => rules.Merit;

    /// <summary>The same money by each of the measures.</summary>
    public IEnumerable<MeasureOrderView> Measures
    {
        get
        {
            var orders = byMeasure.Value;
            var now = Funded(orders.First(m => m.Merit == rules.Merit));
            return orders.Select(m =>
            {
                var then = Funded(m);
                IEnumerable<MeasurePlaceView> Told(MeasureOrder of, HashSet<int> unlike) => of.Places.Select((p, i) => (p, Rank: i + 1)).Where(p => p.p.Funded && !unlike.Contains(p.p.Index) && Here(p.p.Index)).Take(MostAPage).Select(p => Place(p.p, p.Rank));
                return new MeasureOrderView(m, Told(m, now), Told(orders.First(o => o.Merit == rules.Merit), then), (first, after) => Page(m.Places, first, after).Where(p => Here(p.Row.Index)).Select(p => Place(p.Row, p.Place)));
            });

            static HashSet<int> Funded(MeasureOrder m) => [.. m.Places.Where(p => p.Funded).Select(p => p.Index)];
        }
    }

    private MeasurePlaceView Place((int Index, bool Funded) p, int rank) => new($"{study.Options[p.Index].HouseId}~{study.Options[p.Index].Key}", Named(Option(p.Index)), rank, p.Funded);

    private static string Named(OptionView option) => $"{option.House.Farm.Name}, {option.House.Name}: {option.Title}";
}
