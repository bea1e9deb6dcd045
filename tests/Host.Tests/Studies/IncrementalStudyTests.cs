using FarmPortfolio.Engine.Farms;
using FarmPortfolio.Engine.Studies;
using FarmPortfolio.Host.Accounts;
using FarmPortfolio.Host.Storage;
using FarmPortfolio.Host.Storage.Items;
using FarmPortfolio.Host.Studies;
using Microsoft.Extensions.DependencyInjection;

namespace FarmPortfolio.Host.Tests.Studies;

/// <summary>One changed house: only its tank or meter is reckoned again, from what the file keeps, to the bits of a whole study.</summary>
public class IncrementalStudyTests(TemporaryHost host) : IClassFixture<TemporaryHost>
{
    [Fact]
    public async Task A_changed_house_costs_one_unit_and_gives_the_bits_of_a_whole_study()
    {
        var first = (string)(await host.StudyDone())["id"]!;
        var (items, jobs, studies) = (host.Services.GetRequiredService<ItemStore>(), host.Services.GetRequiredService<StudyJobs>(), host.Services.GetRequiredService<StudyStore>());
        var house = items.All<HouseFacts>(Viewer.Local, "demo", ItemKind.House)[0];
        Assert.NotNull(items.Save(Viewer.Local, "demo", "a longer house", "longer", [new(ItemKind.House, house.Id, house.Revision, house.Facts with { LengthM = house.Facts.LengthM + 2 }, house.Remarks)]).ChangeId);
        var study = await Done(jobs.Start(Viewer.Local, "demo").Study.Id);
        var (before, after) = (studies.Result(Viewer.Local, first)!, jobs.Result(Viewer.Local, study.Id)!);
        Assert.Equal(after.UnitSha256s.Count - 1, after.UnitsKnown);
        Assert.Equal(after.UnitSha256s.Count - 1, after.UnitSha256s.Intersect(before.UnitSha256s).Count());
        Assert.Equal(before.Options.Count, after.Options.Count);
        Assert.Equal(after.Options.Count, after.SavingByPath.Count);
        Assert.NotEqual(before.ResultSha256, after.ResultSha256);
        var whole = StudyRun.Run(host.Services.GetRequiredService<PortfolioReader>().Read(Viewer.Program, study), 1, null, CancellationToken.None).Result!;
        Assert.Equal(whole.ResultSha256, after.ResultSha256);
        Assert.Equal(whole.ResultSha256, study.ResultSha256);
    }

    [Fact]
    public async Task Units_are_for_the_program_alone_and_those_in_use_are_never_swept()
    {
        var id = (string)(await host.StudyDone())["id"]!;
        var (units, studies) = (host.Services.GetRequiredService<UnitStore>(), host.Services.GetRequiredService<StudyStore>());
        Assert.Throws<UnauthorizedAccessException>(() => units.For(Viewer.Local));
        units.Sweep(Viewer.Program, TimeSpan.Zero);
        var result = studies.Result(Viewer.Local, id)!;
        Assert.NotEmpty(result.Options);
        Assert.All(result.UnitSha256s, u => Assert.NotNull(units.For(Viewer.Program).Find(u)));
    }

    private async Task<StudyRow> Done(string id)
    {
        var studies = host.Services.GetRequiredService<StudyStore>();
        while (studies.Find(Viewer.Local, id) is { State: "queued" or "running" })
        {
            await Task.Delay(50, TestContext.Current.CancellationToken);
        }

        var study = studies.Find(Viewer.Local, id)!;
        Assert.Equal("done", study.State);
        return study;
    }
}
