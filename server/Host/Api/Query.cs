using FarmPortfolio.Engine;
using FarmPortfolio.Engine.Economics;
using FarmPortfolio.Engine.Funding;
using FarmPortfolio.Engine.Scenarios;
using FarmPortfolio.Engine.Studies;
using FarmPortfolio.Engine.Units;
using FarmPortfolio.Host.Storage.Items;
using FarmPortfolio.Host.Studies;
using GraphQL;

namespace FarmPortfolio.Host.Api;

/// <summary>One act of one person.</summary>
[Name("Change")]
public sealed record ChangeView([property: Id] string Id, int Seq, string At, string Said, bool IsUndo, int ItemCount)
{
    /// <summary>From the store's row.</summary>
    internal static ChangeView Of(ChangeRow c) => new(c.Id, (int)c.Seq, c.AtUtc, c.Said, c.UndoesId is not null, (int)c.ItemCount);
}

/// <summary>A co-op.</summary>
[Name("Coop")]
public sealed partial class CoopView(Register register)
{
    /// <summary>Identifier.</summary>
    [Id] public string Id => register.Coop.Id;

    /// <summary>Name.</summary>
    public string Name => register.Coop.Name;

    /// <summary>Whether it is invented.</summary>
    public bool IsDemo => register.Coop.IsDemo == 1;

    /// <summary>Farms by name.</summary>
    public FarmPage Farms(string? text = null, int first = 50, string? after = null)
    {
        var all = register.Farms.Values.Where(f => string.IsNullOrWhiteSpace(text) || (f.Remarks.Name + " " + f.Remarks.Place).Contains(text.Trim(), StringComparison.OrdinalIgnoreCase))
            .OrderBy(f => f.Remarks.Name, StringComparer.Ordinal).ThenBy(f => f.Id, StringComparer.Ordinal).ToList();
        var page = all.Where(f => after is null || string.CompareOrdinal(f.Remarks.Name + "\n" + f.Id, after) > 0).Take(Math.Clamp(first, 1, 200)).ToList();
        var next = page.Count > 0 && page[^1].Id != all[^1].Id ? page[^1].Remarks.Name + "\n" + page[^1].Id : null;
        return new([.. page.Select(f => new FarmView(register, f))], next, all.Count);
    }

    /// <summary>Every farm by name, to choose from.</summary>
    public IEnumerable<FarmChoiceView> FarmChoices
    {
        get
        {
            var burns = register.Groups.Values.OrderBy(g => g.Remarks.Name, StringComparer.Ordinal).ThenBy(g => g.Id, StringComparer.Ordinal).GroupBy(g => g.Facts.FarmId).ToDictionary(g => g.Key, g => g.First().Facts.Fuel);
            return register.Farms.Values.OrderBy(f => f.Remarks.Name, StringComparer.Ordinal).ThenBy(f => f.Id, StringComparer.Ordinal)
                .Select(f => new FarmChoiceView(f.Id, f.Remarks.Name ?? "unnamed", burns.TryGetValue(f.Id, out var fuel) ? fuel : null));
        }
    }

    /// <summary>Number of houses.</summary>
    public int HouseCount => register.Houses.Count;

    /// <summary>Houses with bills and without.</summary>
    public GradeCountsView GradeCounts
    {
        get
        {
            var grades = register.Houses.Values.Select(h => register.Grade(h.Facts)).ToList();
            return new(grades.Count(g => g == DataGrade.A), grades.Count(g => g == DataGrade.B), grades.Count(g => g == DataGrade.C));
        }
    }

    /// <summary>Stations.</summary>
    public IEnumerable<StationView> WeatherStations => register.Stations.Values.Select(s => new StationView(register, s));

    /// <summary>Price series, shared ones included.</summary>
    public IEnumerable<PriceSeriesView> PriceSeries => register.Prices.Values.Select(p => new PriceSeriesView(register, p));

    /// <summary>Assumptions in use.</summary>
    public ScenarioSetView? ScenarioSet => register.Set is { } s ? new(s) : null;

    /// <summary>Studies, newest first: so many, of those before a number where one is told.</summary>
    public IEnumerable<StudyView> Studies(int first = 20, int? beforeNumber = null) =>
        register.Studies.All(register.Viewer, register.Coop.Id).Where(s => beforeNumber is null || s.Number < beforeNumber).Take(Math.Clamp(first, 1, 100)).Select(s => new StudyView(register, s));

    /// <summary>Number of studies.</summary>
    public int StudyTotal => register.Studies.All(register.Viewer, register.Coop.Id).Count;

    /// <summary>Newest done study.</summary>
    public StudyView? NewestStudy => register.Newest is { } s ? new(register, s) : null;

    /// <summary>The study that waits or runs.</summary>
    public StudyView? RunningStudy => register.Studies.All(register.Viewer, register.Coop.Id).FirstOrDefault(s => s.State is "queued" or "running") is { } s ? new(register, s) : null;

    /// <summary>Changes, newest first.</summary>
    public IEnumerable<ChangeView> Changes(int first = 30) => register.History.Changes(register.Viewer, register.Coop.Id, Math.Clamp(first, 1, 200)).Select(ChangeView.Of);
}

/// <summary>A farm to choose, with the fuel of its first tank or meter.</summary>
[Name("FarmChoice")]
public sealed record FarmChoiceView([property: Id] string Id, string Name, FuelKind? Fuel);

/// <summary>A page of farms.</summary>
public sealed record FarmPage(IEnumerable<FarmView> Items, string? Next, int Total);

/// <summary>Houses by data grade.</summary>
[Name("GradeCounts")]
public sealed record GradeCountsView(int A, int B, int C);

/// <summary>What can be asked.</summary>
public sealed partial class Query
{
    /// <summary>Version of the program.</summary>
    public static string Version => StudyJobs.ProgramVersion;

    /// <summary>The viewer's co-op.</summary>
    public static CoopView Coop([FromServices] Register register) => new(register);

    /// <summary>A farm.</summary>
    public static FarmView? Farm([FromServices] Register register, [Id] string id) => register.Farms.TryGetValue(id, out var f) ? new(register, f) : null;

    /// <summary>A house.</summary>
    public static HouseView? House([FromServices] Register register, [Id] string id) => register.Houses.TryGetValue(id, out var h) ? new(register, h) : null;

    /// <summary>An option: house and key with a tilde between.</summary>
    public static OptionView? Option([FromServices] Register register, [Id] string id)
    {
        var at = id.IndexOf('~', StringComparison.Ordinal);
        return at > 0 && register.Houses.TryGetValue(id[..at], out var h) && register.OptionSet(h.Id)?.Facts.Options.FirstOrDefault(o => o.Key == id[(at + 1)..]) is { } option ? new(register, h, option) : null;
    }

    /// <summary>What to fund first, by the newest done study. Null until there is one whose single futures can be drawn; a round's applications count where it is named.</summary>
    /// <exception cref="ExecutionError">A rule is out of range.</exception>
    public static FundingOrderView? FundingOrder([FromServices] Register register, [FromServices] RoundsDesk desk, [FromServices] PageShelf shelf, FundingRulesInput? rules = null, [Id] string? roundId = null)
    {
        var wanted = (rules ?? new()).Rules();
        if (wanted.Check() is { Count: > 0 } faults)
        {
            throw new ExecutionError($"{faults[0].Message} {faults[0].Remedy}") { Code = AskedRange.BadInput, Extensions = new Dictionary<string, object?> { ["field"] = faults[0].Field } };
        }

        if (register.Newest is not { } study || register.Jobs.Result(register.Viewer, study.Id) is not { } stored)
        {
            return null;
        }

        // single futures are asked for only where the order is not at hand: drawing them again takes as long as the study; what comes of it is kept for whoever asks next
        StudyResult? Drawn() => register.Jobs.WithFutures(register.Viewer, study, CancellationToken.None);
        var applicantOf = desk.ApplicantsOf(roundId is null ? null : desk.Round(roundId));
        var name = $"{register.Coop.Id} {register.LastSeq} {study.Id} {roundId} {CanonicalJson.Write(wanted)}";
        return shelf.Of($"order {name}", () => Drawn() is { } result ? Engine.Funding.FundingOrder.Of(result, applicantOf, wanted) : null) is { } order
            ? new(register, stored, order, wanted, new(() => shelf.Of($"measures {name}", () => Drawn() is { } result ? Engine.Funding.FundingOrder.ByMeasure(result, applicantOf, wanted) : null) ?? []))
            : null;
    }

    /// <summary>Prices to come of a fuel, delivered, from the futures of the assumptions in use. Null where they cannot be drawn.</summary>
    /// <exception cref="ExecutionError">It is asked for no season, or for more than fifteen.</exception>
    public static PriceFanView? PriceFan([FromServices] Register register, FuelKind fuel, int seasons = 5)
    {
        var set = register.SetFacts with { ReplicateCount = 2, PathCount = 512, SeasonCount = (int)AskedRange.Of(nameof(seasons), seasons, 1, 15) };
        set = set.PriceCase?.FirstSeason >= set.SeasonCount ? set with { PriceCase = null } : set;
        var (spec, _) = FuturesSpec.Of(set, register.PricesInUse.ToDictionary(p => p.Key, p => register.Prices[p.Value].Facts), [0, 1], [new double[12], new double[12]]);
        if (spec?.Of(fuel) is not { } one)
        {
            return null;
        }

        var futures = new Futures(spec);
        var blocks = new[] { futures.Draw(0), futures.Draw(1) };
        var kwh = HeatingValues.KwhPerUnit(fuel, one.DeliveredUnit, register.Heating)!.Value;
        var months = 12 * set.SeasonCount;
        var bands = Enumerable.Range(0, months).Select(m => Distribution.Of([.. blocks.SelectMany(b => Enumerable.Range(0, b.Paths).Select(p => b.Price(fuel)[p * months + m] * kwh))], 2)).ToList();
        var first = new DateOnly(set.FirstSeason, 7, 1);
        return new(one.DeliveredUnit, Enumerable.Range(0, months).Select(m => first.AddMonths(m).ToString("yyyy-MM", System.Globalization.CultureInfo.InvariantCulture)),
            bands.Select(b => b.P10), bands.Select(b => b.P25), bands.Select(b => b.P50), bands.Select(b => b.P75), bands.Select(b => b.P90), one.PassThrough?.Words ?? (one.Model.Months == 0 ? "the usual level or that of the assumptions, flat in real money, wandering by a tenth a year; common practice, no source" : "as recorded"));
    }
}
