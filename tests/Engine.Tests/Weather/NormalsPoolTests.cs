using FarmPortfolio.Engine.Weather;

namespace FarmPortfolio.Engine.Tests.Weather;

/// <summary>Winters made from monthly normals: months' means kept, degree days as Erbs, Klein and Beckman (1983) reckon them, departures as the stations beside have them.</summary>
public class NormalsPoolTests
{
    private static readonly int[] Pool = [2012, 2013, 2014, 2015, 2016, 2017, 2018, 2019];

    // an inland place at 44 N, January first
    private static readonly double[] Normals = [-7.2, -5.6, -0.4, 6.9, 13.4, 18.6, 21.3, 20.4, 16.1, 9.4, 3.3, -3.1];

    private static readonly WeatherStationFacts Station = new() { LatitudeDeg = 44, LongitudeDeg = -73, ElevationM = 100, MonthlyMeanC = Normals };

    [Fact]
    public void Months_keep_their_means_exactly_in_every_season_and_over_the_pool()
    {
        var alone = Means(2001, NormalsYear.MinMaxC(Station, 2001));
        var departures = NormalsPool.Of([Recorded(0), Recorded(1), Recorded(2)]);
        var seasons = Pool.Select((season, w) => Means(season, NormalsYear.MinMaxC(Station, season, departures.DepartureK[w], departures.BetweenK))).ToList();
        for (var m = 0; m < 12; m++)
        {
            var normal = Normals[SeasonCalendar.CalendarMonth(m) - 1];
            Assert.Equal(normal, alone[m], 1e-9);
            Assert.Equal(normal, seasons.Average(s => s[m]), 1e-9);
            Assert.All(seasons.Select((s, w) => (Mean: s[m], Departure: departures.DepartureK[w][m])), s => Assert.Equal(normal + s.Departure, s.Mean, 1e-9));
        }
    }

    [Theory]
    [InlineData(18.3333, 0.01)]
    [InlineData(15, 0.01)]
    [InlineData(10, 0.02)]
    public void Degree_days_of_the_made_days_are_those_of_the_formula(double baseC, double tolerance)
    {
        var spread = DegreeDays.SpreadOfMonthsK(Normals);
        var formula = Enumerable.Range(0, 12).Sum(m => DegreeDays.OfMonthK(Normals[m], DateTime.DaysInMonth(2015, m + 1), baseC, spread));
        var alone = DegreeDaysK(NormalsYear.MinMaxC(Station, 2001), baseC);
        var departures = NormalsPool.Of([Recorded(0)]);
        var pool = Pool.Select((season, w) => DegreeDaysK(NormalsYear.MinMaxC(Station, season, departures.DepartureK[w], departures.BetweenK), baseC)).Average();
        Assert.True(Math.Abs(alone / formula - 1) <= tolerance, $"base {baseC} C: formula {formula:0.0}, one year made {alone:0.0} Kd, tolerance {100 * tolerance} %");
        Assert.True(Math.Abs(pool / formula - 1) <= tolerance, $"base {baseC} C: formula {formula:0.0}, mean of the pool {pool:0.0} Kd, tolerance {100 * tolerance} %");
    }

    [Fact]
    public void Of_one_station_the_departures_are_its_own_and_add_up_to_nothing()
    {
        var years = Recorded(0);
        var departures = NormalsPool.Of([years]);
        Assert.Equal(1, departures.Stations);
        for (var m = 0; m < 12; m++)
        {
            var mean = years.Average(y => y.MonthMeanC(m));
            Assert.Equal(0, departures.DepartureK.Sum(d => d[m]), 1e-9);
            Assert.All(years.Select((y, w) => (y, w)), x => Assert.Equal(x.y.MonthMeanC(m) - mean, departures.DepartureK[x.w][m], 1e-9));
        }
    }

    [Fact]
    public void Of_several_stations_they_vary_as_one_station_does_and_not_as_a_mean_of_many()
    {
        IReadOnlyList<IReadOnlyList<WeatherYear>> all = [Recorded(0), Recorded(1), Recorded(2)];
        static double Square(NormalsPool p) => p.DepartureK.Sum(d => d.Sum(k => k * k));
        var single = all.Average(s => Square(NormalsPool.Of([s])));
        Assert.Equal(single, Square(NormalsPool.Of(all)), 1e-6 * single);
        var averaged = Pool.Select((_, w) => Enumerable.Range(0, 12).Sum(m => Math.Pow(all.Average(s => NormalsPool.Of([s]).DepartureK[w][m]), 2))).Sum();
        Assert.True(averaged < 0.9 * single, $"the mean of three varies by {averaged}, one by {single}");
    }

    [Fact]
    public void The_order_of_the_stations_moves_no_bit()
    {
        var (left, right) = (NormalsPool.Of([Recorded(0), Recorded(1), Recorded(2)]), NormalsPool.Of([Recorded(2), Recorded(0), Recorded(1)]));
        Assert.Equal(left.DepartureK.SelectMany(d => d), right.DepartureK.SelectMany(d => d));
        Assert.Equal(left.BetweenK, right.BetweenK);
    }

    [Fact]
    public void Made_years_are_marked_and_a_pool_of_another_length_is_refused()
    {
        var departures = NormalsPool.Of([Recorded(0)]);
        var years = departures.Years(Station, Pool);
        Assert.Equal(Pool, years.Select(y => y.Season));
        Assert.All(years, y => Assert.True(y.FromNormals));
        Assert.Throws<ArgumentException>(() => departures.Years(Station, Pool[..3]));
        Assert.Throws<ArgumentException>(() => NormalsYear.Of(Station with { MonthlyMeanC = Normals[..11] }, 2001));
    }

    /// <summary>Eight winters whose months stray from the normals, a part of it shared by all stations.</summary>
    private static WeatherYear[] Recorded(int station) => [.. Pool.Select(season => WeatherYears.FromDaily(Station, season, [.. Enumerable.Range(0, SeasonCalendar.Days(season)).SelectMany(d =>
    {
        var month = SeasonCalendar.FirstDay(season).AddDays(d).Month;
        var mean = Normals[month - 1] + station + 1.8 * Math.Sin(1.7 * season + 0.9 * month) + 1.1 * Math.Sin(2.3 * season + 1.3 * month + 2 * station) + 4 * Math.Sin(0.4 * d);
        return new[] { mean - 5, mean + 5 };
    })]))];

    private static double[] Means(int season, double[] minMaxC) => [.. Enumerable.Range(0, 12).Select(m =>
        Enumerable.Range(0, SeasonCalendar.Days(season)).Where(d => SeasonCalendar.MonthIndex(SeasonCalendar.FirstDay(season).AddDays(d).Month) == m).Average(d => (minMaxC[2 * d] + minMaxC[2 * d + 1]) / 2))];

    private static double DegreeDaysK(double[] minMaxC, double baseC) => Enumerable.Range(0, minMaxC.Length / 2).Sum(d => Math.Max(0, baseC - (minMaxC[2 * d] + minMaxC[2 * d + 1]) / 2));
}
