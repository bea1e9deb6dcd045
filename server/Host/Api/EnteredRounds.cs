using FarmPortfolio.Engine;
using FarmPortfolio.Engine.Funding;
using FarmPortfolio.Engine.HeatDemand;
using FarmPortfolio.Engine.Retrofits;
using FarmPortfolio.Host.Storage.Items;
using GraphQL;

namespace FarmPortfolio.Host.Api;

/// <summary>An award of an earlier round, from its papers; no id = a new one. Money in US dollars, fuel saved a season in kWh, what was delivered only of a new one.</summary>
public sealed record EnteredAwardInput(
    [property: Id] string? Id, int? ExpectedRevision, [property: Id] string HouseId, IEnumerable<string> Parts, double GrantUsd, double? OutlayUsd, double? PaidUsd, DateOnly? InstalledOn, double? PromisedKwh, double? PromisedLowKwh,
    double? PromisedHighKwh, VerificationInput? Delivered);

/// <summary>A round that was decided before this program was used; no id = a new one. Awards that are left out stay as they are.</summary>
public sealed record EnteredRoundInput(
    [property: Id] string? Id, int? ExpectedRevision, [property: Id] string RequestId, string Name, DateOnly DecidedOn, string? RulesInShort, double? BudgetUsd, IEnumerable<EnteredAwardInput> Awards);

/// <summary>Rounds entered by hand.</summary>
public sealed partial class Mutation
{
    private const int EarliestYear = 1950;
    private const double MostUsd = 1e8;

    private static Fault EnteredElsewhere => new("ENTERED", "id", "The round was entered by hand: nothing is decided here.", "Change what its papers say on the page of the round.");

    /// <summary>Saves a round of before this program with its awards as one change. It is no decision of this program: nothing is chained, and undo takes it back.</summary>
    public static RoundPayload SaveEnteredRound([FromServices] RoundsDesk desk, EnteredRoundInput input)
    {
        var known = input.Id is null ? null : desk.Round(input.Id);
        if (input.Id is not null && known?.Facts.State != RoundState.Entered)
        {
            return Refused(new Fault("NOT_FOUND", "id", "There is no such round entered by hand.", "Reload the page."));
        }

        var faults = new List<Fault>();
        if (string.IsNullOrWhiteSpace(input.Name))
        {
            faults.Add(new("EMPTY", "name", "The round has no name.", "Give it the one on its papers."));
        }

        if (input.DecidedOn.Year < EarliestYear || input.DecidedOn > desk.Today)
        {
            faults.Add(new("OUT_OF_RANGE", "decidedOn", $"A decision on {input.DecidedOn:yyyy-MM-dd} is outside {EarliestYear}-01-01 to {desk.Today:yyyy-MM-dd}.", "Give the day on its papers."));
        }

        var given = input.Awards.ToList();
        var id = input.Id ?? desk.Register.Ids.New("fo");
        var awards = given.Select((a, i) => Entered(desk, input, id, a, i, faults)).ToList();
        var stay = input.Id is null ? [] : desk.AwardsOf(id).Where(a => given.All(g => g.Id != a.Id)).ToList();
        if (given.Count + stay.Count == 0)
        {
            faults.Add(new("EMPTY", "awards", "The round has no award.", "Enter at least one: farm and house, what was paid for, and its grant."));
        }

        var granted = awards.Sum(a => (a.Facts as AwardFacts)?.GrantCapCents ?? 0) / 100.0 + stay.Sum(a => a.Facts.GrantCapCents) / 100.0;
        var facts = (known?.Facts ?? new()) with { State = RoundState.Entered, DecidedOn = input.DecidedOn, Rules = new() { BudgetUsd = input.BudgetUsd ?? granted, ReserveShare = 0 } };
        faults.AddRange(faults.Count == 0 ? facts.Check() : []);
        if (faults.Count == 0 && input.BudgetUsd is { } budget && granted > budget + 0.005)
        {
            faults.Add(new("OVER_BUDGET", "budgetUsd", $"The grants come to ${granted:#,0.##}, the budget is ${budget:#,0.##}.", "Mend a grant or the budget, or leave the budget empty."));
        }

        if (faults.Count > 0)
        {
            return Refused([.. faults]);
        }

        var name = input.Name.Trim();
        return Round(desk.Register.Items.Save(desk.Register.Viewer, desk.Register.Coop.Id, $"round {name} is {(known is null ? "entered by hand, not decided here" : "changed by hand")}", input.RequestId,
            [new(ItemKind.FundingRound, id, input.ExpectedRevision, facts, (known?.Remarks ?? new()) with { Name = name, Note = string.IsNullOrWhiteSpace(input.RulesInShort) ? null : input.RulesInShort.Trim() }), .. awards]));
    }

    /// <summary>Deletes a round entered by hand with its awards as one change; the history keeps them and undo brings them back.</summary>
    public static RoundPayload DeleteEnteredRound([FromServices] RoundsDesk desk, [Id] string id, int expectedRevision, [Id] string requestId) =>
        desk.Round(id) is not { Facts.State: RoundState.Entered } round
            ? Refused(new Fault("NOT_FOUND", "id", "There is no such round entered by hand.", "Reload the page."))
            : Round(desk.Register.Items.Save(desk.Register.Viewer, desk.Register.Coop.Id, $"round {round.Remarks.Name}, entered by hand, is deleted with its awards", requestId,
                [new(ItemKind.FundingRound, id, expectedRevision, null, round.Remarks), .. desk.AwardsOf(id).Select(a => new ItemToSave(ItemKind.Award, a.Id, a.Revision, null, a.Remarks))]));

    private static ItemToSave Entered(RoundsDesk desk, EnteredRoundInput input, string roundId, EnteredAwardInput a, int at, List<Fault> faults)
    {
        void Wrong(string code, string field, string message, string remedy) => faults.Add(new(code, $"awards.{at}.{field}", $"Award {at + 1}: {message}", remedy));
        var known = a.Id is null ? null : desk.Awards.GetValueOrDefault(a.Id);
        if (a.Id is not null && (known is null || known.Facts.RoundId != roundId))
        {
            Wrong("NOT_FOUND", "id", "there is no such award in this round.", "Reload the page.");
        }

        if (!desk.Register.Houses.ContainsKey(a.HouseId))
        {
            Wrong("NOT_FOUND", "houseId", "there is no such house in this co-op.", "Choose a house of the register; enter it there first where it lacks.");
        }

        var parts = a.Parts.Distinct(StringComparer.Ordinal).ToList();
        var entries = parts.Select(p => desk.Register.Catalogue.Find(CatalogueKind.Retrofit, p)).ToList();
        if (parts.Count == 0 || parts.Contains("none") || entries.Contains(null))
        {
            Wrong("NOT_FOUND", "parts", "what was paid for is no work of the catalogue.", "Choose one or more works of the list.");
        }

        var outlay = a.OutlayUsd ?? a.GrantUsd;
        if (!(a.GrantUsd > 0 && a.GrantUsd <= MostUsd) || !(outlay >= a.GrantUsd && outlay <= MostUsd))
        {
            Wrong("OUT_OF_RANGE", "grantUsd", $"a grant of ${a.GrantUsd:#,0.##} for work of ${outlay:#,0.##} is outside 0 to the cost of the work.", "Give dollars over 0, and a cost that is at least the grant.");
        }

        static long Cents(double usd) => (long)Math.Round(100 * Math.Clamp(usd, -1e9, 1e9));
        var installed = Milestones.Of(input.DecidedOn).Single(m => m.Kind == MilestoneKind.Installed);
        var facts = (known?.Facts ?? new AwardFacts
        {
            RoundId = roundId,
            FarmId = desk.FarmOf(a.HouseId),
            HouseId = a.HouseId,
            OptionKey = string.Empty,
            Title = string.Empty,
            GrantCapCents = 0,
            GrantShare = 1,
            OutlayCents = 0,
            AwardedOn = input.DecidedOn,
            Milestones = [installed],
            Verified = a.Delivered is { } v ? new(VerifiedBy.Hand, v.Share, v.Low, v.High, v.Season, v.Words.Trim()) : null,
        }) with
        {
            FarmId = desk.FarmOf(a.HouseId),
            HouseId = a.HouseId,
            OptionKey = UsualOptions.Option(parts, OptionTiming.Now).Key,
            Title = string.Join("; ", entries.Select(e => e?.Title)),
            GrantCapCents = Cents(a.GrantUsd),
            GrantShare = outlay > 0 ? Math.Min(1, a.GrantUsd / outlay) : 1,
            OutlayCents = Cents(outlay),
            AwardedOn = input.DecidedOn,
            PaidCents = a.PaidUsd is { } paid ? Cents(paid) : known?.Facts.PaidCents ?? 0,
            PromisedKwh = a.PromisedKwh,
            PromisedLowKwh = a.PromisedLowKwh,
            PromisedHighKwh = a.PromisedHighKwh,
        };
        if (a.InstalledOn is { } on)
        {
            facts = facts with { Milestones = [.. facts.Milestones.Where(m => m.Kind != MilestoneKind.Installed).Append((facts.Milestones.FirstOrDefault(m => m.Kind == MilestoneKind.Installed) ?? installed) with { DoneOn = on }).OrderBy(m => m.Kind)] };
        }

        if (facts.Verified is { } told && string.IsNullOrWhiteSpace(told.Words))
        {
            Wrong("EMPTY", "delivered", "what was delivered names no ground.", "Say what stands behind it: which bills, which season, whose reckoning.");
        }

        faults.AddRange(facts.Check().Select(f => f with { Field = $"awards.{at}.{f.Field}", Message = $"Award {at + 1}: {f.Message}" }));
        return new(ItemKind.Award, a.Id, a.ExpectedRevision, facts, known?.Remarks ?? new($"award to {desk.FarmName(facts.FarmId)}, {desk.HouseName(a.HouseId)}, entered by hand"));
    }
}
