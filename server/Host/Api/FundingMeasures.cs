using FarmPortfolio.Engine.Funding;
using GraphQL;

namespace FarmPortfolio.Host.Api;

/// <summary>Where an option stands under a measure.</summary>
[Name("MeasurePlace")]
public sealed record MeasurePlaceView([property: Id] string OptionId, string Title, int Rank, bool Funded);

/// <summary>What the same money buys by one of the measures; means over all futures, a season.</summary>
[Name("MeasureOrder")]
public sealed record MeasureOrderView(Merit Merit, IEnumerable<MeasurePlaceView> Places, double GrantUsd, double SavingUsd, double WorstTenthUsd, double HeatSavedKwh, double Co2SavedKg);

/// <summary>The order beside the orders by the other measures.</summary>
public sealed partial class FundingOrderView
{
    /// <summary>Measure of the round.</summary>
    public Merit Merit => rules.Merit;

    /// <summary>The same money by each of the measures.</summary>
    public IEnumerable<MeasureOrderView> Measures => Engine.Funding.FundingOrder.ByMeasure(
        study, applicantOf, rules)
        .Select(m => new MeasureOrderView(
            m.Merit, m.Places.Select((p, i) => new MeasurePlaceView($"{study.Options[p.Index].HouseId}~{study.Options[p.Index].Key}", Named(Option(p.Index)), i + 1, p.Funded)), m.GrantUsd, m.SavingUsd, m.WorstTenthUsd, m.HeatSavedKwh, m.Co2SavedKg));

    private static string Named(OptionView option) => $"{option.House.Farm.Name}, {option.House.Name}: {option.Title}";
}
