using FarmPortfolio.Engine.Weather;

namespace FarmPortfolio.Engine.HeatDemand;

/// <summary>A closing time laid over one season: what share of each hour a movable is due to be in place, whatever the temperature.</summary>
/// <param name="due">Share of each hour, 0 to 1.</param>
/// <param name="dueInSun">Share of each hour's sunlit part that it covers, 0 to 1.</param>
internal sealed class RuleHours(double[] due, double[] dueInSun)
{
    /// <summary>Share of each hour, 0 to 1.</summary>
    public double[] Due { get; } = due;

    /// <summary>Share of each hour's sunlit part that it covers, 0 to 1.</summary>
    public double[] DueInSun { get; } = dueInSun;

    /// <summary>Whether it is ever due while the sun is up.</summary>
    public bool ShadesSun { get; } = Array.Exists(dueInSun, s => s > 0);

    /// <summary>A movable that is never due.</summary>
    public static RuleHours Never { get; } = new(new double[8784], new double[8784]);

    /// <summary>A closing time in a season.</summary>
    /// <param name="closing">The closing time.</param>
    /// <param name="year">The season.</param>
    /// <returns>Shares by hour.</returns>
    public static RuleHours Of(ClosingTime closing, WeatherYear year)
    {
        var (due, inSun) = (new double[year.Hours], new double[year.Hours]);
        var (delay, month) = (0.0, 0);
        for (var h = 0; h < due.Length; h++)
        {
            month = h >= year.MonthStart[month + 1] ? month + 1 : month;
            var up = year.SunUp[h];
            var share = closing.Kind == ClosingKind.Clock ? closing.Clock!.Share(month, h % 24) : year.RadiationWPerM2[h] < closing.BelowWPerM2 ? 1 : 1 - up;
            share = closing.Kind == ClosingKind.Staff ? Math.Min(share, closing.Clock!.Share(month, h % 24)) : share;
            delay = share <= 0 ? closing.DelayHours : delay;
            var lost = Math.Min(delay, share);
            delay -= lost;
            due[h] = share - lost;
            inSun[h] = up > 0 ? Math.Max(0, due[h] - (1 - up)) / up : 0;
        }

        return new(due, inSun);
    }
}
