using FarmPortfolio.Engine.Fuel;
using FarmPortfolio.Host.Accounts;
using FarmPortfolio.Host.Storage.Items;
using FarmPortfolio.Host.Studies;
using Microsoft.Extensions.DependencyInjection;

namespace FarmPortfolio.Host.Tests.Studies;

public class StarterRecordsTests(TemporaryHost host) : IClassFixture<TemporaryHost>
{
    [Fact]
    public void Every_starter_record_ships_and_is_of_its_fuel()
    {
        var items = host.Services.GetRequiredService<ItemStore>();
        Assert.NotEmpty(StarterRecords.Ids);
        Assert.All(StarterRecords.Ids, r => Assert.Equal(r.Key, items.Find<PriceSeriesFacts>(Viewer.Local, ItemKind.PriceSeries, r.Value)!.Facts.Fuel));
    }
}
