using System.Text.Json.Serialization;
using FarmPortfolio.Engine.Units;

namespace FarmPortfolio.Engine.Funding;

/// <summary>Steps of an award, in order.</summary>
public enum MilestoneKind
{
    /// <summary>The farm accepts.</summary>
    Accepted,

    /// <summary>The work is ordered.</summary>
    Ordered,

    /// <summary>It is installed, before the heating season.</summary>
    Installed,

    /// <summary>It is inspected.</summary>
    Inspected,

    /// <summary>Invoices and proof of payment are in.</summary>
    Invoiced,

    /// <summary>The grant is paid.</summary>
    Paid,

    /// <summary>Bills of the first season are reported.</summary>
    Reported,
}

/// <summary>A step with the day it is due and the day it was done.</summary>
/// <param name="Kind">Step.</param>
/// <param name="DueOn">Due.</param>
/// <param name="DoneOn">Done; null = not yet.</param>
/// <param name="Evidence">What shows it.</param>
public sealed record Milestone(MilestoneKind Kind, DateOnly DueOn, DateOnly? DoneOn = null, string? Evidence = null);

/// <summary>How a saving was verified.</summary>
public enum VerifiedBy
{
    /// <summary>Entered by hand with its interval.</summary>
    Hand,

    /// <summary>Fuel of the season before and after, at the weather of the season after.</summary>
    Fuel,
}

/// <summary>What an award delivered, as a share of what was promised, with the ends of its 90 % interval.</summary>
/// <param name="By">How.</param>
/// <param name="Share">Verified over promised.</param>
/// <param name="Low">One in twenty is lower.</param>
/// <param name="High">One in twenty is higher.</param>
/// <param name="Season">The season, by the year of its July; null = several.</param>
/// <param name="Words">What stands behind it.</param>
public sealed record Verification(VerifiedBy By, double Share, double Low, double High, int? Season, string Words);

/// <summary>A grant given and followed to its verified result.</summary>
public sealed record AwardFacts
{
    /// <summary>Decision that gave it; null = given before decisions were kept.</summary>
    public string? DecisionId { get; init; }

    /// <summary>Round.</summary>
    public required string RoundId { get; init; }

    /// <summary>Farm.</summary>
    public required string FarmId { get; init; }

    /// <summary>House.</summary>
    public required string HouseId { get; init; }

    /// <summary>Option's key.</summary>
    public required string OptionKey { get; init; }

    /// <summary>Plain name of the option.</summary>
    public required string Title { get; init; }

    /// <summary>Most that is paid, whole cents.</summary>
    public required long GrantCapCents { get; init; }

    /// <summary>Share of the eligible cost that is paid.</summary>
    public required double GrantShare { get; init; }

    /// <summary>Whole cost expected, whole cents.</summary>
    public required long OutlayCents { get; init; }

    /// <summary>Day it was given.</summary>
    public required DateOnly AwardedOn { get; init; }

    /// <summary>Fuel saving promised a season, kWh; null = none was reckoned.</summary>
    public double? PromisedKwh { get; init; }

    /// <summary>One in ten is lower, kWh, where the papers of an earlier round tell it; null = not told.</summary>
    public double? PromisedLowKwh { get; init; }

    /// <summary>One in ten is higher, kWh; null = not told.</summary>
    public double? PromisedHighKwh { get; init; }

    /// <summary>What must come before the grant is firm.</summary>
    public IReadOnlyList<string> Conditions { get; init; } = [];

    /// <summary>Steps in order.</summary>
    public IReadOnlyList<Milestone> Milestones { get; init; } = [];

    /// <summary>Eligible cost as invoiced, whole cents; null = not yet.</summary>
    public long? InvoicedCents { get; init; }

    /// <summary>Paid so far, whole cents.</summary>
    public long PaidCents { get; init; }

    /// <summary>Day on which the money went back to the round; null = it did not.</summary>
    public DateOnly? ReturnedOn { get; init; }

    /// <summary>Why it went back.</summary>
    public string? ReturnedReason { get; init; }

    /// <summary>What was verified; null = nothing yet.</summary>
    public Verification? Verified { get; init; }

    /// <summary>Where it stands, in a word: offered by a decision or entered by hand, the last step done, or returned.</summary>
    [JsonIgnore]
    public string State => ReturnedOn is not null ? "returned" : Milestones.LastOrDefault(m => m.DoneOn is not null) is { } last ? last.Kind.ToString().ToLowerInvariant() : DecisionId is null ? "entered" : "offered";

    /// <summary>What the grant comes to: the cap, or the same share of a smaller cost; 0 once returned.</summary>
    [JsonIgnore]
    public long PayableCents => ReturnedOn is not null ? PaidCents : InvoicedCents is { } cost ? Math.Min(GrantCapCents, (long)Math.Floor(GrantShare * cost + 1e-6)) : GrantCapCents;

    /// <summary>Money that went back to the round: the whole of a returned grant, or what a smaller cost leaves.</summary>
    [JsonIgnore]
    public long FreedCents => GrantCapCents - PayableCents;

    /// <summary>All that is wrong with it.</summary>
    /// <returns>Faults; empty = usable.</returns>
    public IReadOnlyList<Fault> Check()
    {
        var faults = new List<Fault>();
        foreach (var m in Milestones.Where(m => m.DoneOn < AwardedOn))
        {
            faults.Add(new("OUT_OF_ORDER", "milestones", $"\"{m.Kind.ToString().ToLowerInvariant()}\" on {m.DoneOn:yyyy-MM-dd} is before the award of {AwardedOn:yyyy-MM-dd}.", "Give the day it was done; work begun before the award is not eligible."));
        }

        if (InvoicedCents is < 0 or > 10_000_000_000)
        {
            faults.Add(new("OUT_OF_RANGE", "invoicedUsd", $"An invoiced cost of {InvoicedCents / 100.0:0.00} is outside 0 to 100,000,000.", "Give the eligible cost in dollars."));
        }

        if (PaidCents < 0 || (ReturnedOn is null && PaidCents > PayableCents))
        {
            faults.Add(new("OUT_OF_RANGE", "paidUsd", $"${PaidCents / 100.0:0.00} paid is more than the grant of ${PayableCents / 100.0:0.00}{(InvoicedCents is null ? string.Empty : $", {100 * GrantShare:0.#} % of the cost invoiced and no more than its cap")}.", "Pay at most that; a larger cost does not raise the grant."));
        }

        if (ReturnedOn is not null && string.IsNullOrWhiteSpace(ReturnedReason))
        {
            faults.Add(new("REASON_NEEDED", "returnedReason", "The money goes back without a reason.", "Say why: the memo of the next round tells it."));
        }

        if (PromisedKwh is { } promised && !(promised > 0 && promised <= 1e9))
        {
            faults.Add(new("OUT_OF_RANGE", "promised", $"A promise of {ShortFigure.Of(promised, "0.##")} kWh a season is outside 0 to 1,000,000,000.", "Give the fuel saving promised for a season, or leave it empty."));
        }

        if ((PromisedLowKwh is not null || PromisedHighKwh is not null) && !(PromisedLowKwh <= PromisedKwh && PromisedKwh <= PromisedHighKwh))
        {
            faults.Add(new("OUT_OF_ORDER", "promised", $"The promise of {PromisedKwh:0} kWh does not lie between {PromisedLowKwh:0} and {PromisedHighKwh:0}, or one of the three is not told.", "Give the promise with both ends, the low one first, or the promise alone."));
        }

        if (Verified is not null && PromisedKwh is null)
        {
            faults.Add(new("NOT_PROMISED", "verified", "A share of the promise was delivered, but no promise is on record.", "Enter the promise, or leave what was delivered empty."));
        }

        if (Verified is { } v && !(v.Low <= v.Share && v.Share <= v.High && v.Low >= -2 && v.High <= 4))
        {
            faults.Add(new("OUT_OF_ORDER", "verified", $"Verified {ShortFigure.Of(v.Share, "0.00")} does not lie between {ShortFigure.Of(v.Low, "0.00")} and {ShortFigure.Of(v.High, "0.00")}, or these are outside -2 to 4.", "Give shares of what was promised, 0.87 for 87 %, the low end first."));
        }

        return faults;
    }
}
