using FarmPortfolio.Engine.Weather;
using FarmPortfolio.Host.Loading;

namespace FarmPortfolio.Host.Tests.Loading;

public class WeatherAndPriceFilesTests
{
    [Fact]
    public void The_Central_Park_record_loads_whole()
    {
        // NOAA GHCN-Daily USW00094728, 2009-01-01 to 2024-02-29, public domain
        using var text = File.OpenText(Path.Combine(AppContext.BaseDirectory, "data", "ghcn-central-park-USW00094728-daily-2009-2024.csv"));
        var loaded = WeatherFile.Read(text, "central park");
        Assert.Empty(loaded.Faults);
        Assert.Equal(5538, loaded.Value!.Days);
        Assert.Contains("Fahrenheit", loaded.Value.UnitWords, StringComparison.Ordinal);
        Assert.All(Enumerable.Range(2009, 14), s => Assert.DoesNotContain(loaded.Value.Seasons.Single(v => v.Season == s).ValuesC, double.IsNaN));
    }

    [Fact]
    public void By_station_rows_are_tenths_of_celsius()
    {
        // the row printed in NOAA's readme: 1 January 2014 TMAX -171 = -17.1 C
        using var text = new StringReader("USW00014922,20140101,TMAX,-171,,,W,2400\nUSW00014922,20140101,TMIN,-250,,,W,2400\nUSW00014922,20140101,PRCP,0,,,W,2400\n");
        var loaded = WeatherFile.Read(text, "x");
        Assert.Empty(loaded.Faults);
        var at = 2 * SeasonCalendar.DayIndex(new(2014, 1, 1));
        Assert.Equal(-25.0, loaded.Value!.Seasons[0].ValuesC[at], 1e-9);
        Assert.Equal(-17.1, loaded.Value.Seasons[0].ValuesC[at + 1], 1e-9);
    }

    [Theory]
    [InlineData("Month,Price\n1997-01,3.45\n1997-02,2.15\n")]
    [InlineData("Series Id,Year,Period,Value\nAPU000072511,1997,M01,3.45\nAPU000072511,1997,M02,2.15\n")]
    [InlineData("\uFEFF1997-01;3.45\r\n1997-02;2.15\r\n")]
    public void Monthly_prices_load_in_every_layout(string text)
    {
        using var reader = new StringReader(text);
        var loaded = MonthlyPrices.Read(reader, "p.csv");
        Assert.Equal(new(1997, 1, 1), loaded.Value!.FirstMonthOn);
        Assert.Equal([3.45, 2.15], loaded.Value.Prices);
        Assert.Equal("SHORT", Assert.Single(loaded.Faults).Code);
    }
}
