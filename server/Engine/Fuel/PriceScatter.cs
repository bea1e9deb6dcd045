namespace FarmPortfolio.Engine.Fuel;

/// <summary>What a contract's own price lies off its line on the index: normal about 0, drawn apart from the index. Months of a series follow each other; what tickets tell is one draw a season.</summary>
/// <param name="Key">Whose draws: contracts with the same key are off their lines together.</param>
/// <param name="SdUsdPerKwh">Standard deviation about the line, US dollars a kWh of fuel.</param>
/// <param name="Carry">Share of a month's residual that the next month keeps, 0 to 0.98; not used by the season.</param>
/// <param name="BySeason">One draw holds for a whole season.</param>
public sealed record PriceScatter(string Key, double SdUsdPerKwh, double Carry, bool BySeason)
{
    /// <summary>Most that a month is taken to keep of the month before.</summary>
    public const double MostCarry = 0.98;

    /// <summary>Share of the line's price that an own price is never drawn under: as the residual of a retail price over its wholesale price is held.</summary>
    internal const double LeastShare = 0.2;

    /// <summary>Spread below which a series is the index itself but for rounding, US dollars a kWh.</summary>
    private const double Nothing = 1e-8;

    /// <summary>The scatter of a contract's own price series.</summary>
    /// <param name="seriesId">Price series.</param>
    /// <param name="basis">Its line on the index.</param>
    /// <returns>The scatter; null where there is none.</returns>
    public static PriceScatter? OfSeries(string? seriesId, SeriesBasis basis) => seriesId is not null && basis.SdUsdPerKwh > Nothing ? new($"series {seriesId}", basis.SdUsdPerKwh, basis.Carry, false) : null;

    /// <summary>The scatter that tickets tell of the price at a tank or meter.</summary>
    /// <param name="contract">Contract.</param>
    /// <param name="kwhPerUnit">kWh in its unit.</param>
    /// <returns>The scatter; null where none is told.</returns>
    public static PriceScatter? OfTickets(ContractFacts contract, double kwhPerUnit) => contract.ScatterUsdPerUnit is > 0 and var sd ? new($"tickets {contract.SupplyGroupId}", sd / kwhPerUnit, 0, true) : null;

    /// <summary>Share of a residual that the next month keeps: lag-one autocorrelation over months that follow each other, its bias in short records taken off (Kendall 1954, (1 + 3 r) / n; from memory).</summary>
    /// <param name="residuals">Month and residual, oldest first.</param>
    /// <returns>0 to <see cref="MostCarry"/>; a residual that swings back counts as independent.</returns>
    public static double CarryOf(IReadOnlyList<(DateOnly Month, double Residual)> residuals)
    {
        var (cross, square, pairs) = (0.0, 0.0, 0);
        for (var i = 1; i < residuals.Count; i++)
        {
            if (residuals[i - 1].Month.AddMonths(1) == residuals[i].Month)
            {
                cross += residuals[i].Residual * residuals[i - 1].Residual;
                square += residuals[i - 1].Residual * residuals[i - 1].Residual;
                pairs++;
            }
        }

        var r = square > 0 ? cross / square : 0;
        return pairs == 0 ? 0 : Math.Clamp(r + (1 + 3 * r) / pairs, 0, MostCarry);
    }
}
