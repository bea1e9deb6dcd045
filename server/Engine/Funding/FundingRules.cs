using System.Text.Json.Serialization;
using FarmPortfolio.Engine.Units;

namespace FarmPortfolio.Engine.Funding;

/// <summary>What a round counts.</summary>
public enum Merit
{
    /// <summary>Members' net saving a season.</summary>
    NetSaving,

    /// <summary>Heat saved.</summary>
    Energy,

    /// <summary>CO2 not emitted.</summary>
    Co2,

    /// <summary>Members' net saving a season in the worst tenth of the futures: for a co-op that would rather not lose than win.</summary>
    BadYears,
}

/// <summary>What becomes of a house without a fuel record.</summary>
public enum GradeCRule
{
    /// <summary>It may be funded on condition that its bills come.</summary>
    OnBills,

    /// <summary>It is funded like any other.</summary>
    AsOthers,

    /// <summary>It is not eligible.</summary>
    Refused,
}

/// <summary>A house pinned to an option, or left out, with the reason.</summary>
/// <param name="HouseId">House.</param>
/// <param name="OptionKey">Option; null = the whole house.</param>
/// <param name="Reason">Why.</param>
public sealed record Pin(string HouseId, string? OptionKey, string Reason);

/// <summary>A grant that the committee set by itself.</summary>
/// <param name="HouseId">House.</param>
/// <param name="OptionKey">Option.</param>
/// <param name="GrantUsd">Grant, US dollars.</param>
/// <param name="Reason">Why.</param>
public sealed record SetAmount(string HouseId, string OptionKey, double GrantUsd, string Reason);

/// <summary>A group of farms, by the word that farms claim it with, and what the round keeps for it.</summary>
/// <param name="Name">The word.</param>
/// <param name="MinimumShare">Share of the money that can be given which goes to it at least, 0 to 1.</param>
/// <param name="CostShare">Share of the eligible cost that a grant to it covers; null = as all others.</param>
public sealed record GroupShare(string Name, double MinimumShare, double? CostShare = null);

/// <summary>The rules of a round. Money in US dollars, shares 0 to 1.</summary>
public sealed record FundingRules
{
    /// <summary>Most letters in the name of a group, so that every farm can claim it.</summary>
    public const int LongestGroup = 100;

    private const int LongestWords = 500;

    /// <summary>Money of the round.</summary>
    public double BudgetUsd { get; init; } = 50000;

    /// <summary>Share held for overruns and errors.</summary>
    public double ReserveShare { get; init; } = 0.10;

    /// <summary>Share of the eligible cost that a grant covers.</summary>
    public double CostShare { get; init; } = 0.60;

    /// <summary>Most a house gets.</summary>
    public double HouseCapUsd { get; init; } = 9000;

    /// <summary>Most a farm and its relations get, grants of the years looked back on counted in.</summary>
    public double FarmCapUsd { get; init; } = 14000;

    /// <summary>Share of the whole cost that all public money together may reach.</summary>
    public double PublicShare { get; init; } = 1;

    /// <summary>Grants below this are not offered.</summary>
    public double MinimumGrantUsd { get; init; } = 250;

    /// <summary>A grant cut for want of money is offered where at least this share of what was asked is left; 1 = whole grants alone.</summary>
    public double PartialShare { get; init; } = 1;

    /// <summary>An option must have paid itself back, and stay so, by this season.</summary>
    public int PaybackSeasons { get; init; } = 10;

    /// <summary>In at least this share of the futures.</summary>
    public double Confidence { get; init; } = 0.60;

    /// <summary>What counts.</summary>
    public Merit Merit { get; init; } = Merit.NetSaving;

    /// <summary>Houses without a fuel record.</summary>
    public GradeCRule GradeC { get; init; } = GradeCRule.OnBills;

    /// <summary>Codes of the retrofits that the money may pay for; empty = all.</summary>
    public IReadOnlyList<string> RetrofitCodes { get; init; } = [];

    /// <summary>Day by which a farm must have been a member; null = not asked.</summary>
    public DateOnly? MemberByOn { get; init; }

    /// <summary>What each applicant must show, in the round's own words: "work not begun before the application".</summary>
    public IReadOnlyList<string> Tests { get; init; } = [];

    /// <summary>Groups with a minimum share.</summary>
    public IReadOnlyList<GroupShare> Groups { get; init; } = [];

    /// <summary>Whether money that a group cannot use stays kept for it; otherwise it is released to all.</summary>
    public bool GroupMoneyHeld { get; init; }

    /// <summary>Seed of the lot that parts what is equal in all else.</summary>
    public long LotSeed { get; init; } = 1;

    /// <summary>Pinned houses.</summary>
    public IReadOnlyList<Pin> Pinned { get; init; } = [];

    /// <summary>Houses or options left out.</summary>
    public IReadOnlyList<Pin> Excluded { get; init; } = [];

    /// <summary>Grants that the committee set.</summary>
    public IReadOnlyList<SetAmount> Amounts { get; init; } = [];

    /// <summary>What can be given now.</summary>
    [JsonIgnore]
    public double AvailableUsd => BudgetUsd * (1 - ReserveShare);

    /// <summary>All that is wrong with the rules.</summary>
    /// <returns>Faults; empty = usable.</returns>
    public IReadOnlyList<Fault> Check()
    {
        var faults = new List<Fault>();
        void Range(string field, double value, double low, double high, string what)
        {
            if (!(value >= low && value <= high))
            {
                faults.Add(new("OUT_OF_RANGE", field, $"The {what} of {ShortFigure.Of(value, "0.##")} is outside {low:0.##} to {high:0.##}.", $"Give a {what} between {low:0.##} and {high:0.##}."));
            }
        }

        Range("budgetUsd", BudgetUsd, 0, 1e9, "budget");
        Range("reserveShare", ReserveShare, 0, 0.9, "reserve");
        Range("costShare", CostShare, 0.01, 1, "cost share");
        Range("houseCapUsd", HouseCapUsd, 0, 1e8, "cap a house");
        Range("farmCapUsd", FarmCapUsd, 0, 1e8, "cap a farm");
        Range("publicShare", PublicShare, 0.01, 1, "share of all public money");
        Range("minimumGrantUsd", MinimumGrantUsd, 0, 1e8, "smallest grant");
        Range("partialShare", PartialShare, 0.01, 1, "share of a grant that is still offered");
        Range("paybackSeasons", PaybackSeasons, 1, 30, "season of the confidence rule");
        Range("confidence", Confidence, 0, 1, "confidence");
        foreach (var g in Groups)
        {
            Range("groups", g.MinimumShare, 0, 1, $"minimum share of \"{g.Name}\"");
            Range("groups", g.CostShare ?? 1, 0.01, 1, $"cost share of \"{g.Name}\"");
        }

        if (Groups.Sum(g => g.MinimumShare) > 1 + 1e-9)
        {
            faults.Add(new("OUT_OF_RANGE", "groups", $"The minimum shares of the groups add up to {100 * Groups.Sum(g => g.MinimumShare):0} %.", "Let them add up to 100 % at most."));
        }

        if (Groups.GroupBy(g => g.Name.Trim(), StringComparer.OrdinalIgnoreCase).FirstOrDefault(g => g.Count() > 1 || g.Key.Length == 0) is { } doubled)
        {
            faults.Add(new("DOUBLED", "groups", doubled.Key.Length == 0 ? "A group has no name." : $"The group \"{doubled.Key}\" stands twice.", "Name each group once, by the word that farms claim it with."));
        }

        if (Groups.FirstOrDefault(g => g.Name.Length > LongestGroup) is { } wordy)
        {
            faults.Add(new("TOO_LONG", "groups", $"The group \"{wordy.Name[..20]}...\" has {wordy.Name.Length:#,0} letters.", $"Name it with at most {LongestGroup}: farms claim it with the same words."));
        }

        if (Tests.Any(string.IsNullOrWhiteSpace))
        {
            faults.Add(new("EMPTY", "tests", "A test has no words.", "Say what the applicant must show, or leave the line out."));
        }

        foreach (var p in Pinned.Concat(Excluded).Select(p => p.Reason).Concat(Amounts.Select(a => a.Reason)).Where(string.IsNullOrWhiteSpace))
        {
            faults.Add(new("REASON_NEEDED", "pinned", "A pin, an exclusion or a set amount has no reason.", "Say why: the memo of the round lists it."));
        }

        if (Pinned.Concat(Excluded).Select(p => p.Reason).Concat(Amounts.Select(a => a.Reason)).Concat(Tests).FirstOrDefault(t => t.Length > LongestWords) is { } words)
        {
            faults.Add(new("TOO_LONG", "rules", $"\"{words[..20]}...\" has {words.Length:#,0} letters.", $"Give a reason or a test at most {LongestWords}: the memo prints it."));
        }

        foreach (var a in Amounts)
        {
            Range("amounts", a.GrantUsd, 0, 1e8, "set amount");
        }

        return faults;
    }
}
