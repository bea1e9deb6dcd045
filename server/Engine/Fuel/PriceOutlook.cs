using static System.Math;

namespace FarmPortfolio.Engine.Fuel;

/// <summary>Where a price may stand after some years, without the shape of the year and the season of unrest.</summary>
/// <param name="Years">Years from the record's last month.</param>
/// <param name="P10">One in ten is lower, US dollars a unit.</param>
/// <param name="Middle">Half the futures are lower.</param>
/// <param name="Mean">Mean of the futures.</param>
/// <param name="P90">One in ten is higher.</param>
public sealed record PriceOutlook(double Years, double P10, double Middle, double Mean, double P90)
{
    /// <summary>Years that are shown.</summary>
    public static IReadOnlyList<int> Shown { get; } = [1, 5, 15];

    /// <summary>The outlook of a model; the filtered level's own uncertainty is not in it, as it is not in the futures.</summary>
    /// <param name="model">Model.</param>
    /// <param name="levelIsMean">Whether the level is the mean of the futures; otherwise it is their middle.</param>
    /// <param name="ownLevelUsdPerUnit">The user's own level, US dollars a unit; null = the record's.</param>
    /// <param name="levelYears">Years from the record's last month to the season of the own level.</param>
    /// <returns>One a year of <see cref="Shown"/>.</returns>
    public static IReadOnlyList<PriceOutlook> Of(PriceModel model, bool levelIsMean, double? ownLevelUsdPerUnit = null, double levelYears = 0) =>
    [
        .. Shown.Select(years =>
        {
            var told = ownLevelUsdPerUnit is { } own ? Log(own) + model.Growth * (years - levelYears) : model.Median(years);
            var variance = model.Variance(years);
            var k = PriceModel.MeanOverMedian(variance);
            var middle = levelIsMean ? told - k : told;
            var band = PriceModel.P90 * Sqrt(variance);
            return new PriceOutlook(years, Exp(middle - band), Exp(middle), Exp(middle + k), Exp(middle + band));
        }),
    ];
}
