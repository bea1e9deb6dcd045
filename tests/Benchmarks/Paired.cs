using System.Diagnostics;

namespace FarmPortfolio.Benchmarks;

/// <summary>Times two pieces of work in turn, so that a machine's drift meets both; medians of seven pairs after a warm-up.</summary>
internal static class Paired
{
    public static (double Reference, double Measured) Rate(double units, Action reference, Action measured)
    {
        var (a, b) = (new double[7], new double[7]);
        for (var i = -2; i < 7; i++)
        {
            var (r, m) = (Seconds(reference), Seconds(measured));
            if (i >= 0)
            {
                (a[i], b[i]) = (r, m);
            }
        }

        Array.Sort(a);
        Array.Sort(b);
        return (units / a[3], units / b[3]);
    }

    /// <summary>Seconds of a piece of work, done over and over for a fifth of a second.</summary>
    public static double Seconds(Action work)
    {
        var times = 0;
        var clock = Stopwatch.StartNew();
        do
        {
            work();
            times++;
        }
        while (clock.Elapsed.TotalSeconds < 0.2);
        return clock.Elapsed.TotalSeconds / times;
    }
}
