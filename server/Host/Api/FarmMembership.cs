using System.Globalization;
using FarmPortfolio.Engine;
using FarmPortfolio.Engine.Farms;
using FarmPortfolio.Engine.Funding;
using FarmPortfolio.Host.Storage.Items;
using GraphQL;

namespace FarmPortfolio.Host.Api;

/// <summary>What the rules of a round ask of a farm; null = not told.</summary>
/// <param name="RelatedKey">A word of its own choice that all farms under one owner share: caps and interests count them as one.</param>
/// <param name="MemberSinceOn">Day it joined.</param>
/// <param name="Groups">Groups it belongs to, by the words that rounds name them with.</param>
public sealed record MembershipInput(string? RelatedKey, DateOnly? MemberSinceOn, IEnumerable<string>? Groups)
{
    private const int LongestKey = 100;
    private const int MostGroups = 20;
    private const int FirstYear = 1850;

    /// <summary>The facts with this in them, and what is wrong with it.</summary>
    /// <param name="register">The register: a word that differs from another farm's in capitals alone takes that farm's spelling.</param>
    /// <param name="farm">Facts as they are.</param>
    /// <param name="farmId">Farm; null = a new one.</param>
    /// <returns>New facts, and the faults.</returns>
    internal (FarmFacts Facts, List<Fault> Faults) On(Register register, FarmFacts farm, string? farmId)
    {
        var faults = new List<Fault>();
        var today = DateOnly.ParseExact(register.Ids.Now()[..10], "yyyy-MM-dd", CultureInfo.InvariantCulture);
        var key = Clean(RelatedKey);
        var groups = (Groups ?? []).Select(Clean).OfType<string>().ToList();
        if (key.Length > LongestKey)
        {
            faults.Add(new("TOO_LONG", "relatedKey", $"The word that the farms share has {key.Length:#,0} letters.", $"Give one of at most {LongestKey}."));
        }

        faults.AddRange(groups.Select(g => RemarkChecks.HiddenMark("groups", g)).Prepend(RemarkChecks.HiddenMark("relatedKey", key)).OfType<Fault>());
        if (MemberSinceOn is { } since && (since > today || since.Year < FirstYear))
        {
            faults.Add(since > today
                ? new("FUTURE_DATE", "memberSinceOn", $"{since:yyyy-MM-dd} is still to come; today is {today:yyyy-MM-dd}.", "Give the day it joined, or leave it empty.")
                : new("OUT_OF_RANGE", "memberSinceOn", $"A member since {since:yyyy-MM-dd} cannot be.", $"Give a day from {FirstYear} on, or leave it empty."));
        }

        if (groups.Any(g => g.Length == 0))
        {
            faults.Add(new("EMPTY", "groups", "A group has no name.", "Name it, or leave it out."));
        }

        if (groups.Find(g => g.Length > FundingRules.LongestGroup) is { } wordy)
        {
            faults.Add(new("TOO_LONG", "groups", $"\"{wordy[..20]}...\" has {wordy.Length:#,0} letters.", $"Name a group with at most {FundingRules.LongestGroup}, by the words that the round has for it."));
        }

        if (groups.Find(g => g.Contains(';', StringComparison.Ordinal) || g.Contains('~', StringComparison.Ordinal)) is { } parted)
        {
            faults.Add(new("UNUSABLE_SIGN", "groups", $"\"{parted}\" has a semicolon or a tilde in it, which part groups and rules.", "Name the group without them."));
        }

        if (groups.GroupBy(g => g, StringComparer.OrdinalIgnoreCase).FirstOrDefault(g => g.Key.Length > 0 && g.Count() > 1) is { } doubled)
        {
            faults.Add(new("DOUBLED", "groups", $"The group \"{doubled.Key}\" stands twice.", "Name each group once."));
        }

        if (groups.Count > MostGroups)
        {
            faults.Add(new("TOO_MANY", "groups", $"{groups.Count:#,0} groups are more than a farm can belong to here.", $"Name at most {MostGroups}."));
        }

        var spelt = register.Farms.Values.Where(f => f.Id != farmId).Select(f => f.Facts.RelatedKey).OfType<string>().Order(StringComparer.Ordinal).FirstOrDefault(k => string.Equals(k, key, StringComparison.OrdinalIgnoreCase));
        return (farm with { RelatedKey = key.Length == 0 ? null : spelt ?? key, MemberSinceOn = MemberSinceOn, Groups = groups }, faults);
    }

    private static string Clean(string? words) => string.Join(' ', (words ?? string.Empty).Split((char[]?)null, StringSplitOptions.RemoveEmptyEntries));
}

/// <summary>A farm by name.</summary>
[Name("NamedFarm")]
public sealed record NamedFarmView([property: Id] string Id, string Name);

/// <summary>What rounds ask of a farm.</summary>
public sealed partial class FarmView
{
    /// <summary>A word that all farms under its owner share; null = it stands alone.</summary>
    public string? RelatedKey => item.Facts.RelatedKey;

    /// <summary>The other farms with that word, by name: caps count them as one with it, and so does an interest declared.</summary>
    public IEnumerable<NamedFarmView> RelatedFarms => item.Facts.RelatedKey is not { } key ? [] : register.Farms.Values.Where(f => f.Id != item.Id && f.Facts.RelatedKey == key)
        .OrderBy(f => f.Remarks.Name, StringComparer.Ordinal).ThenBy(f => f.Id, StringComparer.Ordinal).Select(f => new NamedFarmView(f.Id, f.Remarks.Name ?? "unnamed"));

    /// <summary>Day it joined; null = not told.</summary>
    public DateOnly? MemberSinceOn => item.Facts.MemberSinceOn;

    /// <summary>Groups it belongs to, by the words that rounds name them with.</summary>
    public IEnumerable<string> Groups => item.Facts.Groups;
}

/// <summary>Words in use for farms under one owner and for groups.</summary>
public sealed partial class CoopView
{
    /// <summary>Words that farms under one owner share, each once.</summary>
    public IEnumerable<string> RelatedKeys => register.Farms.Values.Select(f => f.Facts.RelatedKey).OfType<string>().Distinct(StringComparer.OrdinalIgnoreCase).Order(StringComparer.OrdinalIgnoreCase);

    /// <summary>Groups that rounds name or farms belong to, each once.</summary>
    public IEnumerable<string> GroupsInUse([FromServices] RoundsDesk desk) => desk.Rounds.Values.OrderBy(r => r.Id, StringComparer.Ordinal).SelectMany(r => r.Facts.Rules.Groups.Select(g => g.Name))
        .Concat(register.Farms.Values.SelectMany(f => f.Facts.Groups)).Distinct(StringComparer.OrdinalIgnoreCase).Order(StringComparer.OrdinalIgnoreCase);
}
