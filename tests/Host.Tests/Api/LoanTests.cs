using System.Text.Json.Nodes;

namespace FarmPortfolio.Host.Tests.Api;

/// <summary>Loan cases, statements and the book over the real pipeline.</summary>
public class LoanTests(TemporaryHost host) : IClassFixture<TemporaryHost>
{
    private const string SaveCase = "mutation($input: SaveLoanCaseInput!) { saveLoanCase(input: $input) { caseId changeId conflict faults { code field message remedy } warnings { code field } answer { futuresCount project { underOneShare worst { p50 } } farm { underOneShare } } } }";
    private const string Look = "query($id: ID!) { loanCase(id: $id) { id revision name farm { name } terms { amountUsd termYears } warnings { code } problem { code } answer { futuresCount paymentUsd project { underOneShare bySeason { season cover { p50 } } } farm { underOneShare } capacity { years usd } largest { confidence projectUsd farmUsd } cash { name ownUsd } } } }";

    [Fact]
    public async Task The_demo_s_cases_are_judged_on_its_study_and_stresses_hurt_in_their_own_direction()
    {
        await host.StudyDone();
        var cases = (await Data("{ coop { loanCases { id terms { state } problem { code } answer { project { underOneShare } farm { underOneShare } defaultShare } } } }"))["coop"]!["loanCases"]!.AsArray();
        Assert.InRange(cases.Count, 6, 12);
        Assert.All(cases, c => Assert.Null(c!["problem"]));
        Assert.Contains(cases, c => c!["answer"]!["farm"] is null);
        Assert.Contains(cases, c => (string)c!["terms"]!["state"]! == "DECLINED");
        var loan = (await Data(Look, new { id = "lc_demo000" }))["loanCase"]!;
        Assert.Equal(7, loan["answer"]!["project"]!["bySeason"]!.AsArray().Count);
        Assert.Equal(24, loan["answer"]!["cash"]!.AsArray().Count);
        Assert.Equal(3, loan["answer"]!["capacity"]!["years"]!.AsArray().Count);
        // 8,000 at 7.25 % over 84 months, computed from the formula
        Assert.Equal(121.7215, (double)loan["answer"]!["paymentUsd"]!, 1e-3);
        var safe = loan["answer"]!["largest"]!.AsArray().Select(l => (double?)l!["projectUsd"]).ToList();
        Assert.Equal(safe.OrderDescending(), safe);
        var stresses = (await Data("{ loanCase(id: \"lc_demo000\") { stresses { kind applies projectWorst farmWorst } } }"))["loanCase"]!["stresses"]!.AsArray().ToDictionary(s => (string)s!["kind"]!, s => s!);
        Assert.True((double)stresses["CHEAP_AND_MILD"]["projectWorst"]! < (double)stresses["AS_DRAWN"]["projectWorst"]!);
        Assert.True((double)stresses["DEAR_AND_HARD"]["farmWorst"]! < (double)stresses["AS_DRAWN"]["farmWorst"]!);
        Assert.False((bool)stresses["GRANT_REFUSED"]["applies"]!);
    }

    [Fact]
    public async Task A_case_is_checked_as_one_types_kept_changed_deleted_and_brought_back_and_no_study_goes_out_of_date()
    {
        await host.StudyDone();
        var looked = await Save(null, null, checkOnly: true);
        Assert.Null(looked["changeId"]);
        Assert.Equal(10240, (int)looked["answer"]!["futuresCount"]!);
        var kept = await Save(null, null);
        Assert.NotNull(kept["changeId"]);
        var id = (string)kept["caseId"]!;
        var before = (await Data(Look, new { id }))["loanCase"]!;
        Assert.Equal("Night curtain, house 1", (string)before["name"]!);
        var more = await Save(id, 1, amount: 16_000);
        Assert.NotNull(more["changeId"]);
        Assert.True((await Save(id, 1, amount: 17_000))["conflict"]!.GetValue<bool>());
        var after = (await Data(Look, new { id }))["loanCase"]!;
        Assert.True((double)after["answer"]!["project"]!["underOneShare"]! > (double)before["answer"]!["project"]!["underOneShare"]!);
        Assert.Equal(2, (int)(await Data("query($id: ID!) { history(itemId: $id) { items { revision } } }", new { id }))["history"]!["items"]![0]!["revision"]!);
        var gone = (await Data("mutation($id: ID!) { deleteItem(id: $id, expectedRevision: 2, requestId: \"gone\") { changeId } }", new { id }))["deleteItem"]!;
        Assert.Null((await Data(Look, new { id }))["loanCase"]);
        await Data("mutation($id: ID!) { undo(changeId: $id, requestId: \"back\") { changeId } }", new { id = (string)gone["changeId"]! });
        Assert.Equal(16_000, (double)(await Data(Look, new { id }))["loanCase"]!["terms"]!["amountUsd"]!);
        Assert.Empty((await Data("{ coop { newestStudy { changedSince } } }"))["coop"]!["newestStudy"]!["changedSince"]!.AsArray());
    }

    [Fact]
    public async Task Collateral_is_kept_by_parts_with_its_sum_and_covenants_with_their_day_and_an_act_that_leaves_them_out_keeps_them()
    {
        const string Secured = "query($id: ID!) { loanCase(id: $id) { revision collateralUsd collateral { what worthUsd asOfOn } covenants { words dueOn } answer { lossUsd { mean } } } }";
        await host.StudyDone();
        var terms = new { houseId = "h_demo000", optionKey = "curtain-now", amountUsd = 8000, termYears = 7, ratePerYear = 0.0725 };
        async Task<JsonNode> Kept(object input) => (await Data(SaveCase, new { input }))["saveLoanCase"]!;
        var plain = await Kept(new { requestId = "plain case", name = "secured", terms, checkOnly = false });
        var id = (string)plain["caseId"]!;
        var bare = (await Data(Secured, new { id }))["loanCase"]!;
        Assert.Equal(0.0, (double)bare["collateralUsd"]!);
        object Security(double worth, string what, string words) => new { id, expectedRevision = 1, requestId = Guid.NewGuid().ToString(), name = "secured", terms, checkOnly = false, collateral = new object[] { new { what = "tractor", worthUsd = 30000.25, asOfOn = "2026-05-01" }, new { what, worthUsd = worth } }, covenants = new object[] { new { words, dueOn = "2027-03-01" } } };
        foreach (var (wrong, field) in new[] { (Security(-1, "land", "x"), "collateral.1.worthUsd"), (Security(1, " ", "x"), "collateral.1.what"), (Security(1, "land", " "), "covenants.0.words") })
        {
            var refused = await Kept(wrong);
            Assert.Null(refused["changeId"]);
            Assert.Equal(field, (string)Assert.Single(refused["faults"]!.AsArray())!["field"]!);
        }

        Assert.NotNull((await Kept(Security(12000, "land", "statements of each year")))["changeId"]);
        Assert.NotNull((await Kept(new { id, expectedRevision = 2, requestId = "terms alone", name = "secured", terms, checkOnly = false }))["changeId"]);
        var secured = (await Data(Secured, new { id }))["loanCase"]!;
        Assert.Equal(42000.25, (double)secured["collateralUsd"]!, 1e-9);
        Assert.Equal(["tractor 2026-05-01", "land "], secured["collateral"]!.AsArray().Select(c => $"{c!["what"]} {c["asOfOn"]}"));
        Assert.Equal(("statements of each year", "2027-03-01"), ((string)secured["covenants"]![0]!["words"]!, (string)secured["covenants"]![0]!["dueOn"]!));

        // the lender's own flat figure stays what a default costs
        Assert.Equal((double)bare["answer"]!["lossUsd"]!["mean"]!, (double)secured["answer"]!["lossUsd"]!["mean"]!);
    }

    [Theory]
    [InlineData("amountUsd", -5, 7, 0.07, 0, "h_demo000", "curtain-now")]
    [InlineData("ratePerYear", 8000, 7, 0.31, 0, "h_demo000", "curtain-now")]
    [InlineData("feeUsd", 8000, 7, 0.07, 9000, "h_demo000", "curtain-now")]
    [InlineData("termYears", 8000, 16, 0.07, 0, "h_demo000", "curtain-now")]
    [InlineData("houseId", 8000, 7, 0.07, 0, "h_of_another", "curtain-now")]
    [InlineData("optionKey", 8000, 7, 0.07, 0, "h_demo000", "moon-now")]
    public async Task Terms_that_cannot_be_are_refused_with_their_field(string field, double amount, int years, double rate, double fee, string house, string option)
    {
        await host.StudyDone();
        var answer = await Save(null, null, amount: amount, years: years, rate: rate, fee: fee, house: house, option: option);
        Assert.Null(answer["changeId"]);
        var fault = Assert.Single(answer["faults"]!.AsArray())!;
        Assert.Equal(field, (string)fault["field"]!);
        Assert.True(((string)fault["remedy"]!).Length > 5);
    }

    [Fact]
    public async Task A_loan_that_outlives_its_parts_is_warned_of_and_a_guarantee_over_nine_tenths_refused()
    {
        await host.StudyDone();
        Assert.Contains((await Save(null, null, years: 15, option: "foam-now", checkOnly: true))["warnings"]!.AsArray(), w => (string)w!["code"]! is "TERM_OVER_LIFE" or "PART_DIES_FIRST");
        var answer = await Save(null, null, guarantee: 0.95, checkOnly: true);
        Assert.Equal("guaranteeShare", (string)Assert.Single(answer["faults"]!.AsArray())!["field"]!);
    }

    [Fact]
    public async Task Statements_make_the_farm_s_cover_and_one_year_stands_once()
    {
        await host.StudyDone();
        const string Statement = "mutation($input: SaveStatementInput!) { saveStatement(input: $input) { changeId faults { code field } } }";
        object Year(int year, double heating) => new { input = new { requestId = Guid.NewGuid().ToString(), farmId = "f_demo12", year, netFarmIncomeUsd = 24_000.0, depreciationUsd = 9_000.0, offFarmIncomeUsd = 21_000.0, familyLivingUsd = 30_000.0, heatingUsd = heating, termDebtServiceUsd = 5_000.0 } };
        Assert.Equal("heatingUsd", (string)(await Data(Statement, Year(2025, -1)))["saveStatement"]!["faults"]![0]!["field"]!);
        Assert.Null((await Save(null, null, house: "h_demo120", checkOnly: true))["answer"]!["farm"]);
        Assert.NotNull((await Data(Statement, Year(2025, 18_000)))["saveStatement"]!["changeId"]);
        Assert.Equal("ALREADY_THERE", (string)(await Data(Statement, Year(2025, 18_000)))["saveStatement"]!["faults"]![0]!["code"]!);
        Assert.NotNull((await Save(null, null, house: "h_demo120", checkOnly: true))["answer"]!["farm"]);
        var farm = (await Data("{ farm(id: \"f_demo12\") { statements { year heatingUsd } repaymentCapacity { usd lines { what usd } } } }"))["farm"]!;
        Assert.Equal(24_000, (double)farm["repaymentCapacity"]!["usd"]!);
        Assert.Equal(2025, (int)Assert.Single(farm["statements"]!.AsArray())!["year"]!);
    }

    [Fact]
    public async Task A_book_loses_less_at_its_tail_than_its_cases_added_up_and_leaves_declined_ones_out()
    {
        await host.StudyDone();
        var book = (await Data("{ loanBook { amountUsd addedP99Usd futuresCount drawn { meanUsd p95Usd p99Usd missTogetherMiddle } cases { loanCase { id } expectedUsd } byFuel { amountUsd expectedUsd } leftOut { caseId } } loanBookStress(kind: CHEAP_AND_MILD) { missTogetherMiddle } }"));
        var (whole, drawn) = (book["loanBook"]!, book["loanBook"]!["drawn"]!);
        Assert.DoesNotContain(whole["cases"]!.AsArray(), c => (string)c!["loanCase"]!["id"]! == "lc_demo071");
        Assert.True((double)drawn["p99Usd"]! < (double)whole["addedP99Usd"]! && (double)drawn["p95Usd"]! <= (double)drawn["p99Usd"]!);
        Assert.Equal((double)drawn["meanUsd"]!, whole["byFuel"]!.AsArray().Sum(f => (double)f!["expectedUsd"]!), 1e-6);
        Assert.True((double)book["loanBookStress"]!["missTogetherMiddle"]! > (double)drawn["missTogetherMiddle"]!);
        var one = (await Data("{ loanBook(caseIds: [\"lc_demo000\"]) { amountUsd cases { loanCase { id } } } }"))["loanBook"]!;
        Assert.Equal(8_000, (double)one["amountUsd"]!);
    }

    private async Task<JsonNode> Save(string? id, int? revision, double amount = 8_000, int years = 7, double rate = 0.0725, double fee = 200, double guarantee = 0, string house = "h_demo001", string option = "curtain-now", bool checkOnly = false) =>
        (await Data(SaveCase, new
        {
            input = new { id, expectedRevision = revision, requestId = Guid.NewGuid().ToString(), name = "Night curtain, house 1", checkOnly, terms = new { houseId = house, optionKey = option, amountUsd = amount, termYears = years, ratePerYear = rate, feeUsd = fee, guaranteeShare = guarantee } },
        }))["saveLoanCase"]!;

    private async Task<JsonNode> Data(string query, object? variables = null)
    {
        var answer = await host.Ask(query, variables);
        Assert.True(answer["errors"] is null, answer["errors"]?.ToJsonString());
        return answer["data"]!;
    }
}
