namespace FarmPortfolio.Engine.Fuel;

/// <summary>An interruptible supply that is cut: the days without it fall in the months of greatest use, and the stand-by fuel gives the same heat.</summary>
internal static class CutSupply
{
    /// <summary>Days of the months of a season, July first; February as the calendar has it in the mean.</summary>
    private static ReadOnlySpan<double> SeasonDays => [31, 31, 30, 31, 30, 31, 31, 28.25, 31, 30, 31, 30];

    /// <summary>Takes the fuel of the days without supply out of a season's volumes.</summary>
    /// <param name="days">Days without supply.</param>
    /// <param name="volume">Fuel used by month, July first, kWh; less what the stand-by fuel takes over afterwards.</param>
    /// <param name="standByIndex">Price of the stand-by fuel by month, US dollars a kWh of it.</param>
    /// <returns>What the stand-by fuel costs, US dollars.</returns>
    public static double Take(double days, Span<double> volume, ReadOnlySpan<double> standByIndex)
    {
        Span<bool> done = stackalloc bool[12];
        var usd = 0.0;
        while (days > 0)
        {
            var best = -1;
            for (var m = 0; m < 12; m++)
            {
                best = !done[m] && volume[m] > 0 && (best < 0 || volume[m] > volume[best]) ? m : best;
            }

            if (best < 0)
            {
                break;
            }

            var share = Math.Min(1, days / SeasonDays[best]);
            usd += share * volume[best] * standByIndex[best];
            volume[best] -= share * volume[best];
            (done[best], days) = (true, days - SeasonDays[best]);
        }

        return usd;
    }
}
