using FarmPortfolio.Host.Storage;
using Microsoft.Extensions.DependencyInjection;

namespace FarmPortfolio.Host.Tests.Api;

/// <summary>A list within a list asks the store once a kind, not once a row.</summary>
public class NestedListTests(TemporaryHost host) : IClassFixture<TemporaryHost>
{
    [Theory]
    [InlineData("items { name houses { dataGrade options { outlayUsd result { outlayUsd } } } }")]
    [InlineData("items { name supplyGroups { name contract { kind } houses { name } } quotes { quotedOn } bills { usd { p50 } supplies { name } } worthMost { title } }")]
    [InlineData("items { houses { backCheck { verdict } fromDefaults { title } faults { message } geometry { roofM2 } } }")]
    public async Task Five_farms_take_as_many_calls_of_the_store_as_one(string items)
    {
        await host.StudyDone();
        var database = host.Services.GetRequiredService<Database>();
        async Task<(long Calls, int Farms)> Calls(int first)
        {
            var before = database.Opened;
            // the farms of one place stand at one station, whose winters are read once whatever the number of farms
            var answer = await host.Ask($"{{ coop {{ farms(first: {first}, text: \"Stonemill\") {{ {items} }} }} }}");
            Assert.True(answer["errors"] is null, answer["errors"]?.ToJsonString());
            return (database.Opened - before, answer["data"]!["coop"]!["farms"]!["items"]!.AsArray().Count);
        }

        await Calls(5);
        Assert.Equal((await Calls(1)).Calls, (await Calls(5)).Calls);
        Assert.Equal(5, (await Calls(5)).Farms);
    }
}
