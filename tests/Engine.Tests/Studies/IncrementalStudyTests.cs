using FarmPortfolio.Engine.Farms;
using FarmPortfolio.Engine.Fuel;
using FarmPortfolio.Engine.Scenarios;
using FarmPortfolio.Engine.Studies;

namespace FarmPortfolio.Engine.Tests.Studies;

/// <summary>A study that reckons only what changed gives the bits of the whole study.</summary>
public class IncrementalStudyTests
{
    [Theory]
    [InlineData(1, PathSampling.Plain)]
    [InlineData(8, PathSampling.Plain)]
    [InlineData(1, PathSampling.Sobol)]
    [InlineData(8, PathSampling.Sobol)]
    public void One_changed_house_gives_the_bits_of_a_full_study(int threads, PathSampling sampling)
    {
        var memo = new Memo();
        var before = Apart(SmallPortfolio.Of(5, change: s => s with { Sampling = sampling }));
        var first = Run(before, new(threads, memo));
        var houses = before.Houses.ToDictionary();
        houses["h3"] = houses["h3"] with { LengthM = houses["h3"].LengthM + 3 };
        var after = before with { Houses = houses };
        var units = first.Result.UnitSha256s.ToDictionary(u => u, u => memo.Find(u)!.HouseIds);
        var earlier = new EarlierStudy(first.Result.FuturesSha256, StudyRun.NumbersVersion, units, () => first.Sums, () => before);
        var part = Run(after, new(threads, memo, earlier, first.Futures));
        var whole = Run(after, new(1));
        Assert.Equal(4, part.Result.UnitsKnown);
        Assert.Equal(0, whole.Result.UnitsKnown);
        Assert.Equal(whole.Result.ResultSha256, part.Result.ResultSha256);
        Assert.NotEqual(first.Result.ResultSha256, part.Result.ResultSha256);
    }

    [Fact]
    public void Futures_at_hand_of_another_co_op_lend_their_draws_and_not_their_stations()
    {
        var ours = SmallPortfolio.Of();
        var theirs = ours with
        {
            Stations = ours.Stations.ToDictionary(s => "their " + s.Key, s => s.Value),
            Farms = ours.Farms.ToDictionary(f => f.Key, f => f.Value with { WeatherStationId = "their " + f.Value.WeatherStationId }),
        };
        var first = Run(ours, new(2));
        var second = Run(theirs, new(2, Futures: first.Futures));
        Assert.Equal(first.Result.FuturesSha256, second.Result.FuturesSha256);
        Assert.Empty(second.Result.LeftOut);
        Assert.Equal(Run(theirs, new(2)).Result.ResultSha256, second.Result.ResultSha256);
        Assert.Same(first.Futures.Blocks(1, CancellationToken.None), second.Futures.Blocks(1, CancellationToken.None));
    }

    [Fact]
    public void A_unit_stopped_half_way_leaves_what_was_kept_and_the_rest_is_reckoned_after()
    {
        var memo = new Memo();
        var portfolio = Apart(SmallPortfolio.Of(4));
        using var token = new CancellationTokenSource();
        memo.OnKept = () => token.Cancel();
        Assert.ThrowsAny<OperationCanceledException>(() => Run(portfolio, new(1, memo), token.Token));
        memo.OnKept = () => { };
        var kept = memo.Count;
        Assert.InRange(kept, 1, 3);
        var resumed = Run(portfolio, new(8, memo));
        Assert.Equal(kept, resumed.Result.UnitsKnown);
        Assert.Equal(Run(portfolio, new(1)).Result.ResultSha256, resumed.Result.ResultSha256);
    }

    [Fact]
    public void A_cancelled_study_ends_no_unit_but_those_in_hand_and_early_figures_come_before_its_end()
    {
        const int threads = 2;
        var portfolio = Apart(SmallPortfolio.Of(60, change: s => s with { ReplicateCount = 10, PathCount = 1024 }));
        using var token = new CancellationTokenSource();
        var memo = new Memo();
        var (early, kept) = (0, -1);
        var progress = new Told(p =>
        {
            if (p.Early is { Count: > 0 } figures)
            {
                early += figures.Count;
                token.Cancel();
                kept = kept < 0 ? memo.Count : kept;
            }
        });
        Assert.ThrowsAny<OperationCanceledException>(() => StudyRun.Run(portfolio, new StudyMeans(threads, memo), progress, token.Token));
        Assert.InRange(early, 1, 60);
        Assert.InRange(memo.Count - kept, 0, threads);
        Assert.InRange(memo.Count, 0, 60 - threads);
    }

    [Fact]
    public void Houses_on_one_tank_are_one_unit_and_a_changed_contract_changes_it()
    {
        var portfolio = SmallPortfolio.Of(3);
        var one = Run(portfolio, new(2)).Result.UnitSha256s;
        var contracts = new Dictionary<string, ContractFacts> { ["g"] = new() { SupplyGroupId = "g", Kind = ContractKind.Indexed, Unit = "gal", AdderUsdPerUnit = 0.1 } };
        var other = Run(portfolio with { Contracts = contracts }, new(2)).Result.UnitSha256s;
        Assert.Single(one);
        Assert.NotEqual(one, other);
    }

    [Fact]
    public void What_rounds_ask_of_a_farm_changes_no_unit_and_its_wage_does()
    {
        var portfolio = SmallPortfolio.Of(2);
        Portfolio With(Func<FarmFacts, FarmFacts> change) => portfolio with { Farms = portfolio.Farms.ToDictionary(f => f.Key, f => change(f.Value)) };
        var units = Run(portfolio, new(2)).Result.UnitSha256s;
        Assert.Equal(units, Run(With(f => f with { RelatedKey = "one owner", MemberSinceOn = new(2015, 4, 1), Groups = ["new members"] }), new(2)).Result.UnitSha256s);
        Assert.NotEqual(units, Run(With(f => f with { WageUsdPerHour = 41 }), new(2)).Result.UnitSha256s);
    }

    /// <summary>Every house on a tank of its own.</summary>
    private static Portfolio Apart(Portfolio p) => p with
    {
        Houses = p.Houses.ToDictionary(h => h.Key, h => h.Value with { Supplies = [new("g" + h.Key)] }),
        SupplyGroups = p.Houses.ToDictionary(h => "g" + h.Key, _ => p.SupplyGroups["g"]),
    };

    private static StudyOutcome Run(Portfolio portfolio, StudyMeans means, CancellationToken cancel = default)
    {
        var (outcome, faults) = StudyRun.Run(portfolio, means, null, cancel);
        Assert.Empty(faults);
        return outcome!;
    }

    private sealed class Told(Action<StudyProgress> tell) : IProgress<StudyProgress>
    {
        private readonly Lock gate = new();

        public void Report(StudyProgress value)
        {
            lock (gate)
            {
                tell(value);
            }
        }
    }

    private sealed class Memo : IUnitMemo
    {
        private readonly System.Collections.Concurrent.ConcurrentDictionary<string, byte[]> texts = new();

        public Action OnKept { get; set; } = () => { };

        public int Count => texts.Count;

        public UnitResult? Find(string sha256) => texts.TryGetValue(sha256, out var text) ? UnitResult.Read(text) : null;

        public void Keep(UnitResult result, byte[] text)
        {
            texts[result.Sha256] = text;
            OnKept();
        }
    }
}
