using FarmPortfolio.Engine.Scenarios;
using FarmPortfolio.Host.Accounts;
using FarmPortfolio.Host.Storage;
using FarmPortfolio.Host.Storage.Items;
using FarmPortfolio.Host.Studies;
using Microsoft.Extensions.DependencyInjection;

namespace FarmPortfolio.Host.Tests.Studies;

/// <summary>A study reads the revisions it froze when it was asked for, whatever was saved since.</summary>
public class FrozenInputsTests(TemporaryHost host) : IClassFixture<TemporaryHost>
{
    [Fact]
    public async Task What_is_saved_after_the_asking_is_not_read()
    {
        var id = (string)(await host.StudyDone())["id"]!;
        var (items, reader) = (host.Services.GetRequiredService<ItemStore>(), host.Services.GetRequiredService<PortfolioReader>());
        var study = host.Services.GetRequiredService<StudyStore>().Find(Viewer.Program, id)!;
        var set = items.Find<ScenarioSetFacts>(Viewer.Local, ItemKind.ScenarioSet, "sc_demo")!;
        var before = reader.Read(Viewer.Program, study);
        var saved = items.Save(Viewer.Local, "demo", "another first season", "frozen", [new(ItemKind.ScenarioSet, set.Id, set.Revision, set.Facts with { FirstSeason = 2030 }, set.Remarks)]);
        Assert.NotNull(saved.ChangeId);
        Assert.Equal(2026, before.Set.FirstSeason);
        Assert.Equal(2026, reader.Read(Viewer.Program, study).Set.FirstSeason);
        var answer = await host.Ask("{ coop { newestStudy { seasonNames } } }");
        Assert.Equal("2026-27", (string)answer["data"]!["coop"]!["newestStudy"]!["seasonNames"]![0]!);
    }
}
