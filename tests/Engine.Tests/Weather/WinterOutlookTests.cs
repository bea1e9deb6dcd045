using FarmPortfolio.Engine.Tests.HeatDemand;
using FarmPortfolio.Engine.Weather;

namespace FarmPortfolio.Engine.Tests.Weather;

public class WinterOutlookTests
{
    private static IReadOnlyList<OutlookSeason> Outlook(double offsetK = 0, double trend = 0, double sd = 0, int seasons = 3) => WinterOutlook.Of(TestHouse.Winters, 15, offsetK, trend, sd, seasons);

    [Fact]
    public void Without_an_offset_it_is_the_record()
    {
        var days = TestHouse.Winters.Select(y => y.DegreeDaysK(15)).Order().ToArray();
        Assert.All(Outlook(), s => Assert.Equal(0, s.P50, 12));
        Assert.Equal(days[0] / days[1] - 1, Outlook()[0].P10, 12);
        Assert.Equal(days[2] / days[1] - 1, Outlook()[0].P90, 12);
    }

    [Fact]
    public void A_warmer_offset_is_a_lower_base()
    {
        var days = TestHouse.Winters.Select(y => y.DegreeDaysK(15)).Order().ToArray();
        Assert.Equal(TestHouse.Winters.Select(y => y.DegreeDaysK(14)).Order().ElementAt(1) / days[1] - 1, Outlook(1)[0].P50, 12);
        Assert.Equal(Outlook(0.4)[0].P50, Outlook(0, 0.2)[2].P50, 12);
    }

    [Fact]
    public void A_spread_of_the_offset_widens_it() => Assert.True(Outlook(0, 0, 2)[0].P90 - Outlook(0, 0, 2)[0].P10 > Outlook()[0].P90 - Outlook()[0].P10);
}
