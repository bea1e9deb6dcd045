using MathNet.Numerics.Distributions;
using static System.Math;

namespace FarmPortfolio.Engine.Trials;

/// <summary>How long a trial must run for an interval of a given width.</summary>
/// <param name="WeekSd">Spread of a week's use about the ratio of the houses, share.</param>
/// <param name="Saving">Saving expected, share.</param>
public sealed record TrialDesign(double WeekSd, double Saving)
{
    /// <summary>Spread of a week where no trial of one's own has shown it: careful daily readings of two houses side by side; common practice, no source.</summary>
    public const double UsualWeekSd = 0.08;

    private const int Longest = 200;

    /// <summary>Half the width of the 90 % interval.</summary>
    /// <param name="weeksInUse">Weeks in use, 1 or more.</param>
    /// <param name="weeksIdle">Weeks idle in both houses; under two, the houses' likeness is not known.</param>
    /// <returns>Share; infinite where the weeks are too few to tell a spread.</returns>
    public double HalfWidth(int weeksInUse, int weeksIdle)
    {
        var known = weeksIdle >= 2;
        var freedom = weeksInUse + (known ? weeksIdle - 2 : -1);
        if (weeksInUse < 1 || freedom < 1)
        {
            return double.PositiveInfinity;
        }

        var sampling = WeekSd * WeekSd * (1.0 / weeksInUse + (known ? 1.0 / weeksIdle : 0));
        var all = sampling + (known ? 0 : TrialAnalysis.UnlikeHousesSd * TrialAnalysis.UnlikeHousesSd);
        return StudentT.InvCDF(0, 1, freedom * (all / sampling) * (all / sampling), 0.95) * Sqrt(all) * (1 - Saving);
    }

    /// <summary>Fewest weeks, a third of them idle, for an interval no wider than wanted.</summary>
    /// <param name="halfWidth">Half the width wanted, share, such as 0.05.</param>
    /// <returns>Weeks in use and idle; null = not in four years.</returns>
    public (int InUse, int Idle)? Weeks(double halfWidth) => Enumerable.Range(3, Longest).Select(n => (InUse: n - Max(2, n / 3), Idle: Max(2, n / 3))).Where(w => HalfWidth(w.InUse, w.Idle) <= halfWidth).Cast<(int, int)?>().FirstOrDefault();
}
