using FarmPortfolio.Engine.Units;
using FarmPortfolio.Engine.Weather;

namespace FarmPortfolio.Published.Weather;

/// <summary>
/// Degree days of a month from its mean. Erbs, Klein and Beckman (1983) and Schoenau and Kehrig (1990): formulas from memory, values computed from them by an independent script to 1e-6.
/// Held outside by the Central Park record (NOAA GHCN-Daily): the formula on the record's monthly means against the record's own degree days.
/// </summary>
public class DegreeDayFormulaTests(ITestOutputHelper output)
{
    public static TheoryData<double, int, double, double, double> Erbs => new()
    {
        { 0, 31, 15, 8, 465.989271 }, { 10, 30, 12, 8, 92.100093 }, { 18, 30, 15, 8, 17.402281 }, { -5, 31, 18.3333, 11, 723.591795 },
    };

    public static TheoryData<double, int, double, double, double> Schoenau => new()
    {
        { 0, 31, 15, 5, 465.059234 }, { 10, 30, 12, 4, 83.735587 }, { 18, 30, 15, 3.5, 11.399527 },
    };

    [Theory, MemberData(nameof(Erbs))]
    public void Erbs_Klein_and_Beckman(double meanC, int days, double baseC, double spreadOfMonthsK, double expected) =>
        Assert.Equal(expected, DegreeDays.OfMonthK(meanC, days, baseC, spreadOfMonthsK), 1e-6);

    [Theory, MemberData(nameof(Schoenau))]
    public void Schoenau_and_Kehrig(double meanC, int days, double baseC, double spreadOfDaysK, double expected) =>
        Assert.Equal(expected, DegreeDays.OfNormalMonthK(meanC, days, baseC, spreadOfDaysK), 1e-6);

    [Theory]
    [InlineData(18.3333, 0.02)]
    [InlineData(15.5556, 0.03)]
    [InlineData(10.0, 0.08)]
    public void Normals_of_Central_Park_give_its_degree_days(double baseC, double tolerance)
    {
        var days = CentralPark.Days.Where(d => d.Day >= new DateOnly(2009, 7, 1) && d.Day < new DateOnly(2023, 7, 1)).Select(d => (d.Day, MeanC: Us.C((d.MaxF + d.MinF) / 2))).ToArray();
        var normals = days.GroupBy(d => d.Day.Month).OrderBy(g => g.Key).Select(g => g.Average(d => d.MeanC)).ToArray();
        var recorded = days.Sum(d => Math.Max(0, baseC - d.MeanC)) / 14;
        var spread = DegreeDays.SpreadOfMonthsK(normals);
        var formula = Enumerable.Range(0, 12).Sum(m => DegreeDays.OfMonthK(normals[m], DateTime.DaysInMonth(2023, m + 1), baseC, spread));
        Assert.True(Math.Abs(formula / recorded - 1) <= tolerance, $"base {baseC} C: recorded {recorded:0.0}, formula {formula:0.0} Kd, tolerance {100 * tolerance} %");

        // a season made from the normals against the recorded ones, both shaped hour by hour
        var made = NormalsYear.Of(new() { LatitudeDeg = 40.78, LongitudeDeg = -73.97, ElevationM = 40, MonthlyMeanC = normals, DailySpanK = 8.2 }, 2022);
        Assert.True(made.FromNormals);
        var shaped = CentralPark.Years().Average(y => y.DegreeDaysK(baseC));
        Assert.True(Math.Abs(made.DegreeDaysK(baseC) / shaped - 1) <= tolerance + 0.02, $"base {baseC} C: recorded and shaped {shaped:0.0}, made {made.DegreeDaysK(baseC):0.0} Kd");
    }

    /// <summary>Each winter of Central Park made from its normals and its own months' departures, against the same winter recorded: what is lost where only months are known.</summary>
    [Theory]
    [InlineData(15.5556, 0.02, 0.05)]
    [InlineData(10.0, 0.06, 0.12)]
    public void Winters_made_from_normals_and_departures_stand_beside_the_recorded_ones(double baseC, double meanTolerance, double winterTolerance)
    {
        var recorded = CentralPark.Years();
        var normals = CentralPark.Days.Where(d => d.Day >= new DateOnly(2009, 7, 1) && d.Day < new DateOnly(2023, 7, 1)).GroupBy(d => d.Day.Month).OrderBy(g => g.Key).Select(g => g.Average(d => Us.C((d.MaxF + d.MinF) / 2))).ToArray();
        var made = NormalsPool.Of([recorded]).Years(new() { LatitudeDeg = 40.78, LongitudeDeg = -73.97, ElevationM = 40, MonthlyMeanC = normals, DailySpanK = 8.2 }, CentralPark.Seasons);
        var pairs = recorded.Zip(made).Select(p => (p.First.Season, Recorded: p.First.DegreeDaysK(baseC), Made: p.Second.DegreeDaysK(baseC), Coldest: (p.First.TempC.Min(), p.Second.TempC.Min()))).ToList();
        var mean = pairs.Average(p => p.Made) / pairs.Average(p => p.Recorded) - 1;
        Assert.True(Math.Abs(mean) <= meanTolerance, $"base {baseC} C: mean of the winters made {100 * mean:0.00} % off the recorded, tolerance {100 * meanTolerance} %");
        Assert.All(pairs, p => Assert.True(Math.Abs(p.Made / p.Recorded - 1) <= winterTolerance, $"base {baseC} C, {p.Season}: recorded {p.Recorded:0}, made {p.Made:0} Kd, tolerance {100 * winterTolerance} %"));

        // the mark's caution: the cold spells that a winter really had are not in what was made, and colder ones that it had not may be
        output.WriteLine(string.Join('\n', pairs.Select(p => $"base {baseC} {p.Season}: recorded {p.Recorded:0}, made {p.Made:0} Kd ({100 * (p.Made / p.Recorded - 1):0.0} %), coldest {p.Coldest.Item1:0.0} and {p.Coldest.Item2:0.0} C")) + $"\nmean {100 * mean:0.00} %");
        Assert.Contains(pairs, p => p.Coldest.Item2 > p.Coldest.Item1 + 3);
        Assert.Contains(pairs, p => p.Coldest.Item2 < p.Coldest.Item1 - 3);
    }
}
