using System.Globalization;
using FarmPortfolio.Engine.Funding;
using FarmPortfolio.Engine.Retrofits;
using FarmPortfolio.Host.Storage;
using FarmPortfolio.Host.Storage.Items;

namespace FarmPortfolio.Host.Api;

/// <summary>One request's view of rounds, decisions and awards; each is read at most once.</summary>
public sealed class RoundsDesk
{
    private readonly Lazy<IReadOnlyDictionary<string, Item<FundingRoundFacts>>> rounds;
    private readonly Lazy<IReadOnlyDictionary<string, Item<AwardFacts>>> awards;
    private readonly Lazy<IReadOnlyList<DecisionRow>> decisions;
    private readonly Dictionary<string, RoundDecision?> drafts = new(StringComparer.Ordinal);

    /// <summary>Opens the desk of the request's co-op.</summary>
    /// <param name="register">The register.</param>
    /// <param name="store">Decisions.</param>
    public RoundsDesk(Register register, DecisionStore store)
    {
        (Register, Store) = (register, store);
        rounds = new(() => register.Items.All<FundingRoundFacts>(register.Viewer, register.Coop.Id, ItemKind.FundingRound).ToDictionary(i => i.Id));
        awards = new(() => register.Items.All<AwardFacts>(register.Viewer, register.Coop.Id, ItemKind.Award).ToDictionary(i => i.Id));
        decisions = new(() => store.All(register.Viewer, register.Coop.Id));
    }

    /// <summary>The register.</summary>
    public Register Register { get; }

    /// <summary>Decisions.</summary>
    public DecisionStore Store { get; }

    /// <summary>Rounds.</summary>
    public IReadOnlyDictionary<string, Item<FundingRoundFacts>> Rounds => rounds.Value;

    /// <summary>Awards.</summary>
    public IReadOnlyDictionary<string, Item<AwardFacts>> Awards => awards.Value;

    /// <summary>Decisions of the co-op, oldest first.</summary>
    public IReadOnlyList<DecisionRow> Decisions => decisions.Value;

    /// <summary>Today.</summary>
    public DateOnly Today => DateOnly.ParseExact(Register.Ids.Now()[..10], "yyyy-MM-dd", CultureInfo.InvariantCulture);

    /// <summary>A round.</summary>
    /// <param name="id">Identifier.</param>
    /// <returns>The round; null where there is none.</returns>
    public Item<FundingRoundFacts>? Round(string id) => Rounds.GetValueOrDefault(id);

    /// <summary>Awards of a round, by the day they were given.</summary>
    /// <param name="roundId">Round.</param>
    /// <returns>Awards.</returns>
    public IReadOnlyList<Item<AwardFacts>> AwardsOf(string roundId) => [.. Awards.Values.Where(a => a.Facts.RoundId == roundId).OrderBy(a => a.Facts.AwardedOn).ThenBy(a => a.Id, StringComparer.Ordinal)];

    /// <summary>Decisions of a round, oldest first.</summary>
    /// <param name="roundId">Round.</param>
    /// <returns>Decisions.</returns>
    public IReadOnlyList<DecisionRow> DecisionsOf(string roundId) => [.. Decisions.Where(d => d.RoundId == roundId)];

    /// <summary>What was decided last of a round, or would be decided now.</summary>
    /// <param name="round">Round.</param>
    /// <param name="cancel">Stops the drawing of futures.</param>
    /// <returns>The decision; null where no study stands behind it.</returns>
    public RoundDecision? Plan(Item<FundingRoundFacts> round, CancellationToken cancel) =>
        round.Facts.State switch { RoundState.Decided => DecisionsOf(round.Id)[^1].Decision, RoundState.Entered => Entered(round), _ => Draft(round, cancel) };

    /// <summary>Who stands behind a house: the farm's groups and relations, earlier grants within the years a round looks back, its applications.</summary>
    /// <param name="round">Round; null = none is kept yet.</param>
    /// <returns>The applicant of a house.</returns>
    public Func<string, Applicant> ApplicantsOf(Item<FundingRoundFacts>? round)
    {
        var since = Today.AddYears(-(round?.Facts.LookBackYears ?? new FundingRoundFacts().LookBackYears));
        var earlier = Awards.Values.Where(a => a.Facts.RoundId != round?.Id && a.Facts.AwardedOn >= since).GroupBy(a => Related(a.Facts.FarmId)).ToDictionary(g => g.Key, g => g.Sum(a => a.Facts.PayableCents) / 100.0);
        var applications = (round?.Facts.Applications ?? []).GroupBy(a => a.HouseId).ToDictionary(g => g.Key, g => g.Last());
        return house =>
        {
            var farmId = FarmOf(house);
            var farm = Register.Farms.GetValueOrDefault(farmId)?.Facts;
            return new(farmId, Related(farmId))
            {
                Groups = farm?.Groups ?? [],
                MemberSinceOn = farm?.MemberSinceOn,
                EarlierGrantsUsd = earlier.GetValueOrDefault(Related(farmId)),
                Application = applications.GetValueOrDefault(house),
            };
        };
    }

    /// <summary>Name of a farm.</summary>
    /// <param name="id">Farm.</param>
    /// <returns>Name, or words where it is gone.</returns>
    public string FarmName(string id) => Register.Farms.TryGetValue(id, out var f) ? f.Remarks.Name ?? "unnamed" : "a farm since deleted";

    /// <summary>Name of a house within its farm.</summary>
    /// <param name="id">House.</param>
    /// <returns>Name, or words where it is gone.</returns>
    public string HouseName(string id) => Register.Houses.TryGetValue(id, out var h) ? h.Remarks.Name ?? "unnamed" : "a house since deleted";

    /// <summary>Farm of a house.</summary>
    /// <param name="house">House.</param>
    /// <returns>Farm; the house itself where it is gone.</returns>
    public string FarmOf(string house) => Register.Houses.TryGetValue(house, out var h) ? h.Facts.FarmId : house;

    /// <summary>Plain name of an option.</summary>
    /// <param name="house">House.</param>
    /// <param name="key">Option.</param>
    /// <returns>Name; the key where the option is gone.</returns>
    public string Title(string house, string key) =>
        Register.Houses.TryGetValue(house, out var h) ? new OptionView(Register, h, Register.OptionSet(house)?.Facts.Options.FirstOrDefault(o => o.Key == key) ?? new OptionFacts(key, key.Split('-')[..^1])).Title : key;

    /// <summary>What rounds decided before promised and delivered.</summary>
    /// <param name="except">Round left out.</param>
    /// <returns>Rounds, newest first.</returns>
    public IReadOnlyList<EarlierRound> Earlier(string except) =>
    [
        .. Rounds.Values.Where(r => r.Id != except && r.Facts.State != RoundState.Open).OrderByDescending(r => r.Id, StringComparer.Ordinal).Select(r =>
        {
            var given = AwardsOf(r.Id).Select(a => a.Facts).ToList();
            return new EarlierRound(r.Remarks.Name ?? "unnamed", given.Count, Delivered.Of(given), given.Sum(a => a.FreedCents) / 100.0);
        }),
    ];

    // told in the form of a decision, so that pages read it alike; it is stored nowhere
    private RoundDecision Entered(Item<FundingRoundFacts> round) => new()
    {
        Kind = DecisionKind.Entered,
        RoundId = round.Id,
        RoundRevision = round.Revision,
        DecidedOn = round.Facts.DecidedOn ?? default,
        Round = round.Facts,
        Order = [.. AwardsOf(round.Id).Select(a => new DecidedRow
        {
            HouseId = a.Facts.HouseId,
            FarmId = a.Facts.FarmId,
            OptionKey = a.Facts.OptionKey,
            Title = a.Facts.Title,
            Funded = true,
            GrantUsd = a.Facts.GrantCapCents / 100.0,
            AskedUsd = a.Facts.GrantCapCents / 100.0,
            OutlayUsd = a.Facts.OutlayCents / 100.0,
            EligibleUsd = a.Facts.OutlayCents / 100.0,
            FuelSavedKwh = a.Facts.PromisedKwh,
            Why = "entered by hand, not decided here",
        })],
    };

    private string Related(string farmId) => Register.Farms.TryGetValue(farmId, out var f) ? f.Facts.RelatedKey ?? farmId : farmId;

    // who has an interest in a farm has it in those whose caps count as one with it
    private FundingRoundFacts WithRelated(FundingRoundFacts round)
    {
        var sets = Register.Farms.Keys.Order(StringComparer.Ordinal).ToLookup(Related);
        IEnumerable<Interest> Through(CommitteeMember m) => m.Interests.Where(i => i.FarmId is not null)
            .SelectMany(i => sets[Related(i.FarmId!)].Select(f => new Interest(f, $"{i.Relation}, through a related farm")))
            .Where(t => m.Interests.All(i => i.FarmId != t.FarmId)).DistinctBy(t => t.FarmId);
        return round with { Committee = [.. round.Committee.Select(m => m with { Interests = [.. m.Interests, .. Through(m)] })] };
    }

    private RoundDecision? Draft(Item<FundingRoundFacts> round, CancellationToken cancel)
    {
        if (drafts.TryGetValue(round.Id, out var known))
        {
            return known;
        }

        return drafts[round.Id] = round.Facts.Check().Count == 0 && Register.Newest is { } study && Register.Jobs.WithFutures(Register.Viewer, study, cancel) is { } result
            ? RoundDraft.Of(result, WithRelated(round.Facts), ApplicantsOf(round), Title) with
            {
                RoundId = round.Id,
                RoundRevision = round.Revision,
                DecidedOn = Today,
                StudyId = study.Id,
                StudyNumber = study.Number,
                StudyInputSha256 = study.InputSha256,
                StudyResultSha256 = study.ResultSha256,
                Earlier = Earlier(round.Id),
            }
            : null;
    }
}
