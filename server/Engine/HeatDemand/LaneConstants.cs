namespace FarmPortfolio.Engine.HeatDemand;

/// <summary>What a lane needs that does not change through a season, a row each.</summary>
internal static class LaneConstants
{
    public const int Offset = 0;
    public const int AsOpen = 1;
    public const int AddFirst = 2;
    public const int AddSecond = 3;
    public const int AddBoth = 4;
    public const int Purge = 5;
    public const int Sun = 6;
    public const int Carry = 7;
    public const int Cap = 8;
    public const int FirstOn = 9;
    public const int FirstKeep = 10;
    public const int FirstKeepSun = 11;
    public const int FirstShade = 12;
    public const int SecondOn = 13;
    public const int SecondKeep = 14;
    public const int SecondKeepSun = 15;
    public const int SecondShade = 16;
    public const int Count = 17;

    /// <summary>Writes an option's constants into a lane.</summary>
    public static void Write(Span<double> rows, int lanes, int lane, OptionModel option, double offsetK)
    {
        var open = option.TotalWPerK(0);
        ReadOnlySpan<double> values =
        [
            offsetK, open, option.TotalWPerK(1) - open, option.TotalWPerK(2) - open, option.TotalWPerK(3) - open, option.PurgeWhPerK, option.SunM2, option.CarryOver, option.OutputW,
        ];
        for (var i = 0; i < values.Length; i++)
        {
            rows[i * lanes + lane] = values[i];
        }

        for (var m = 0; m < 2; m++)
        {
            var rule = m < option.Movables.Count ? option.Movables[m].Rule : null;
            var row = FirstOn + 4 * m;
            rows[row * lanes + lane] = rule?.OnBelowC ?? double.NegativeInfinity;
            rows[(row + 1) * lanes + lane] = rule?.KeepBelowC ?? double.NegativeInfinity;
            rows[(row + 2) * lanes + lane] = rule?.KeepSunBelowWPerM2 ?? double.PositiveInfinity;
            rows[(row + 3) * lanes + lane] = rule is null ? 0 : 1 - rule.SunThrough;
        }
    }
}
