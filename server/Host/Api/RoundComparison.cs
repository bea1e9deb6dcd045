using FarmPortfolio.Host.Storage.Items;
using GraphQL;

namespace FarmPortfolio.Host.Api;

/// <summary>What a house gets in two rounds; null = nothing.</summary>
[Name("GrantDifference")]
public sealed record GrantDifferenceView(string Name, double? LeftUsd, double? RightUsd);

/// <summary>Two rounds side by side: what differs in the rules, and in who is funded.</summary>
[Name("RoundComparison")]
public sealed record RoundComparisonView(RoundView Left, RoundView Right, IEnumerable<FieldDifferenceView> Rules, IEnumerable<GrantDifferenceView> Grants, int SameGrants);

/// <summary>Rounds side by side.</summary>
public sealed partial class Query
{
    /// <summary>Two rounds side by side; null where one is not there.</summary>
    public static RoundComparisonView? RoundComparison([FromServices] RoundsDesk desk, [Id] string left, [Id] string right, CancellationToken cancellationToken = default)
    {
        if (desk.Round(left) is not { } l || desk.Round(right) is not { } r)
        {
            return null;
        }

        var rules = FieldDifferences.Of(CanonicalJson.Write(l.Facts.Rules), null, CanonicalJson.Write(r.Facts.Rules), null).Select(d => new FieldDifferenceView(d.Title, d.Left, d.Right));
        var (a, b) = (Grants(l), Grants(r));
        var all = a.Keys.Union(b.Keys).Select(k => new GrantDifferenceView(Named(k), a.TryGetValue(k, out var x) ? x : null, b.TryGetValue(k, out var y) ? y : null)).OrderBy(g => g.Name, StringComparer.Ordinal).ToList();
        return new(new(desk, l), new(desk, r), rules, all.Where(g => g.LeftUsd != g.RightUsd), all.Count(g => g.LeftUsd == g.RightUsd));

        Dictionary<(string House, string Key, string Title), double> Grants(Item<Engine.Funding.FundingRoundFacts> round) =>
            (desk.Plan(round, cancellationToken)?.Order ?? []).Where(o => o.Funded).ToDictionary(o => (o.HouseId, o.OptionKey, o.Title), o => o.GrantUsd);
        string Named((string House, string Key, string Title) k) => $"{desk.FarmName(desk.FarmOf(k.House))}, {desk.HouseName(k.House)}: {k.Title}";
    }
}
