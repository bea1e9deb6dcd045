using Dapper;
using FarmPortfolio.Engine.Studies;
using FarmPortfolio.Host.Accounts;
using FarmPortfolio.Host.Storage;
using Microsoft.Extensions.DependencyInjection;

namespace FarmPortfolio.Host.Tests.Studies;

/// <summary>A study is seen whole or not at all: what stops while its result is written leaves no row of it.</summary>
public class WholeStudyTests(TemporaryHost host) : IClassFixture<TemporaryHost>
{
    [Fact]
    public async Task A_result_that_fails_half_written_leaves_the_study_running_and_no_rows_and_a_whole_one_brings_all()
    {
        var done = (string)(await host.StudyDone())["id"]!;
        var (studies, database) = (host.Services.GetRequiredService<StudyStore>(), host.Services.GetRequiredService<Database>());
        var result = studies.Result(Viewer.Program, done)!;
        using var db = database.Open();
        db.Execute("INSERT INTO study (id, coop_id, number, state, asked_by, asked_utc, input_sha256, numbers_version, program_version) SELECT 'st_half', coop_id, number + 100, 'running', asked_by, asked_utc, input_sha256, numbers_version, program_version FROM study WHERE id = @done", new { done });
        var sha = db.QueryFirst<string>("SELECT unit_sha256 FROM study_unit WHERE study_id = @done", new { done });
        var options = result.Options.Take(6).ToList();
        var outcome = new StudyOutcome(result, new StudySums(4), null!, [new(sha, [.. options.Select(o => o.HouseId).Distinct()], options, [])]);
        var asked = 0;
        Assert.Throws<InvalidOperationException>(() => studies.Finish(Viewer.Program, "st_half", outcome, h => ++asked > 4 ? throw new InvalidOperationException("the power goes") : h, 1));
        Assert.Equal("running", studies.Find(Viewer.Program, "st_half")!.State);
        Assert.Equal(0, Rows());
        Assert.Equal(done, (string)(await host.Ask("{ coop { newestStudy { id } } }"))["data"]!["coop"]!["newestStudy"]!["id"]!);
        studies.Finish(Viewer.Program, "st_half", outcome, h => h, 1);
        Assert.Equal("done", studies.Find(Viewer.Program, "st_half")!.State);
        Assert.Equal(6, db.ExecuteScalar<long>("SELECT COUNT(*) FROM study_option WHERE study_id = 'st_half'"));
        Assert.True(Rows() > 6);

        long Rows() => db.ExecuteScalar<long>("SELECT (SELECT COUNT(*) FROM study_option WHERE study_id = 'st_half') + (SELECT COUNT(*) FROM study_unit WHERE study_id = 'st_half') + (SELECT COUNT(*) FROM study_sum WHERE study_id = 'st_half')");
    }
}
