using System.Text.Json.Nodes;
using FarmPortfolio.Host.Accounts;
using FarmPortfolio.Host.Storage.Items;
using Microsoft.Extensions.DependencyInjection;

namespace FarmPortfolio.Host.Tests.Api;

/// <summary>Interests of a committee in related farms, on a demo of its own.</summary>
public class RoundInterestTests(TemporaryHost host) : RoundCalls(host), IClassFixture<TemporaryHost>
{
    [Fact]
    public async Task An_interest_in_a_farm_is_one_in_those_related_to_it()
    {
        await Host.StudyDone();
        var items = Host.Services.GetRequiredService<ItemStore>();
        var funded = (await Round("fo_demo2", "plan { rows { funded houseId } }"))["plan"]!["rows"]!.AsArray().First(r => (bool)r!["funded"]!)!;
        var house = items.Find<FarmPortfolio.Engine.Farms.HouseFacts>(Viewer.Local, ItemKind.House, (string)funded["houseId"]!)!;
        var farms = items.All<FarmPortfolio.Engine.Farms.FarmFacts>(Viewer.Local, house.CoopId, ItemKind.Farm);
        var (own, kin) = (farms.Single(f => f.Id == house.Facts.FarmId), farms.First(f => f.Id != house.Facts.FarmId));
        var owned = items.Save(Viewer.Local, house.CoopId, "one owner", Guid.NewGuid().ToString(), [.. new[] { own, kin }.Select(f => new ItemToSave(ItemKind.Farm, f.Id, f.Revision, f.Facts with { RelatedKey = "one owner" }, f.Remarks))]);
        Assert.Empty(owned.Faults);
        var committee = Voters.Append(new { name = "the kin", present = true, vote = "FOR", interests = new[] { new { farmId = kin.Id, relation = "owner" } } });
        var id = (string)(await Saved(new { requestId = Guid.NewGuid().ToString(), name = "Related", committee, quorum = 2 }))["roundId"]!;
        var rows = (await Round(id, "plan { rows { houseId ballot { voters recused } } }"))["plan"]!["rows"]!.AsArray();
        var ballot = rows.First(r => (string)r!["houseId"]! == house.Id)!["ballot"]!;
        Assert.Equal((2, "the kin"), ((int)ballot["voters"]!, (string)ballot["recused"]![0]!));
    }
}
