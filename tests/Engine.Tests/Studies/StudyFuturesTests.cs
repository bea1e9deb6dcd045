using FarmPortfolio.Engine.Studies;

namespace FarmPortfolio.Engine.Tests.Studies;

public class StudyFuturesTests
{
    [Fact]
    public void Stations_known_by_other_identifiers_name_the_same_futures_and_another_winter_names_others()
    {
        // five stations some tenths of a kelvin apart, so that adding them in another order would round otherwise
        var stations = Enumerable.Range(0, 5).Select(i => SmallPortfolio.Of(colderK: 0.3 * i + 0.01 / (i + 3)).Stations["w"]).ToArray();
        string Named(params int[] order) => StudyFutures.Of(SmallPortfolio.Of() with { Stations = order.Select((s, i) => (Id: $"s{i}", stations[s])).ToDictionary(s => s.Id, s => s.Item2) }).Futures!.Sha256;
        var name = Named(0, 1, 2, 3, 4);
        Assert.Equal(name, Named(4, 3, 2, 1, 0));
        Assert.Equal(name, Named(2, 0, 4, 1, 3));
        Assert.NotEqual(name, Named(0, 1, 2, 3, 3));
    }
}
