using FarmPortfolio.Engine.Units;

namespace FarmPortfolio.Engine.Funding;

/// <summary>Where a round stands.</summary>
public enum RoundState
{
    /// <summary>Its rules and order may still change.</summary>
    Open,

    /// <summary>Decided: what was decided stands in its decisions.</summary>
    Decided,

    /// <summary>Decided before this program was used and entered by hand: no decision of this program stands behind it.</summary>
    Entered,
}

/// <summary>A round that is kept. Names of people are remarks: facts know members of the committee by a key.</summary>
public sealed record FundingRoundFacts
{
    /// <summary>Where it stands.</summary>
    public RoundState State { get; init; }

    /// <summary>Day of the decision of a round entered by hand; null = it is decided here.</summary>
    public DateOnly? DecidedOn { get; init; }

    /// <summary>Rules, with pins, exclusions and set amounts.</summary>
    public FundingRules Rules { get; init; } = new();

    /// <summary>Day the rules were set; null = not told.</summary>
    public DateOnly? RulesSetOn { get; init; }

    /// <summary>Day until which the reserve is held; null = not told.</summary>
    public DateOnly? ReserveUntilOn { get; init; }

    /// <summary>Day on which money that a group cannot use goes to all; null = at once.</summary>
    public DateOnly? GroupsUntilOn { get; init; }

    /// <summary>Day until which returned money goes down the waiting list; null = no end is set.</summary>
    public DateOnly? WaitingUntilOn { get; init; }

    /// <summary>Years that earlier grants count against the farm's cap.</summary>
    public int LookBackYears { get; init; } = 6;

    /// <summary>Years after payment in which a grant is paid back for the months left: 1 to 10 in practice (7 CFR 1466.21), 5 by common practice.</summary>
    public int ObligationYears { get; init; } = 5;

    /// <summary>Applications.</summary>
    public IReadOnlyList<Application> Applications { get; init; } = [];

    /// <summary>Members of the committee.</summary>
    public IReadOnlyList<CommitteeMember> Committee { get; init; } = [];

    /// <summary>Members present and not recused that every item needs.</summary>
    public int Quorum { get; init; } = 2;

    /// <summary>All that is wrong with the round.</summary>
    /// <returns>Faults; empty = usable.</returns>
    public IReadOnlyList<Fault> Check()
    {
        var faults = new List<Fault>(Rules.Check());
        if (Quorum is < 1 or > 50)
        {
            faults.Add(new("OUT_OF_RANGE", "quorum", $"A quorum of {Quorum} is outside 1 to 50.", "Give a quorum between 1 and 50."));
        }

        if (LookBackYears is < 0 or > 30)
        {
            faults.Add(new("OUT_OF_RANGE", "lookBackYears", $"{LookBackYears} years to look back are outside 0 to 30.", "Give 0 to 30 years."));
        }

        if (ObligationYears is < 1 or > 10)
        {
            faults.Add(new("OUT_OF_RANGE", "obligationYears", $"{ObligationYears} years of obligation are outside 1 to 10.", "Give 1 to 10 years."));
        }

        if (Committee.GroupBy(m => m.Key, StringComparer.Ordinal).FirstOrDefault(g => g.Count() > 1 || string.IsNullOrWhiteSpace(g.Key)) is { } doubled)
        {
            faults.Add(new("DOUBLED", "committee", $"The member \"{doubled.Key}\" stands twice or has no key.", "Name each member once."));
        }

        foreach (var a in Applications.Where(a => !(a.OtherGrantsUsd >= 0 && a.OtherGrantsUsd <= 1e8)))
        {
            faults.Add(new("OUT_OF_RANGE", "applications", $"Other public money of {ShortFigure.Of(a.OtherGrantsUsd, "0.##")} is outside 0 to 100,000,000.", "Give dollars, 0 where there is none."));
        }

        return faults;
    }
}
