namespace FarmPortfolio.Engine.Fuel;

/// <summary>A record as users would have paid it: by the pass-through of the futures, its constant as it is now; or as recorded.</summary>
public static class DeliveredHistory
{
    /// <summary>The delivered price of each month.</summary>
    /// <param name="series">Record.</param>
    /// <param name="passThrough">How it reaches the user; null = as recorded.</param>
    /// <returns>Month and price, US dollars a unit of the pass-through, oldest first; months with a gap near them are left out.</returns>
    public static IReadOnlyList<(DateOnly Month, double UsdPerUnit)> Of(PriceSeriesFacts series, PassThrough? passThrough)
    {
        var points = new List<(DateOnly, double)>();
        var s = series.UsdPerUnit;
        for (var t = passThrough is null ? 0 : 2; t < s.Count; t++)
        {
            if (s[t] is not { } now || (passThrough is not null && (s[t - 1] is null || s[t - 2] is null)))
            {
                continue;
            }

            points.Add((series.FirstMonthOn.AddMonths(t), passThrough is { } p ? p.Constant + p.Now * now + p.Last * s[t - 1]!.Value + p.Before * s[t - 2]!.Value : now));
        }

        return points;
    }
}
