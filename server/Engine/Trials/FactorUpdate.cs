using FarmPortfolio.Engine.Retrofits;
using static System.Math;

namespace FarmPortfolio.Engine.Trials;

/// <summary>A retrofit's realised-saving factor before and after the evidence.</summary>
/// <param name="RetrofitCode">Retrofit.</param>
/// <param name="PriorMean">The catalogue's mean.</param>
/// <param name="PriorSd">The catalogue's standard deviation of a house.</param>
/// <param name="Pool">What the sites say; null = none reported.</param>
/// <param name="Mean">Mean after the evidence.</param>
/// <param name="Sd">Standard deviation of another house after the evidence.</param>
/// <param name="EvidenceIds">Evidence counted.</param>
/// <param name="Words">In a sentence.</param>
public sealed record FactorUpdate(string RetrofitCode, double PriorMean, double PriorSd, PooledSites? Pool, double Mean, double Sd, IReadOnlyList<string> EvidenceIds, string Words)
{
    /// <summary>
    /// Updates the catalogue's factor. The prior's variance is split as the futures split it: the common share is doubt about the mean over all houses, the rest is the
    /// spread between houses. The sites' mean, with variance s^2 + t^2 / k, updates the mean by normal theory; the spread between
    /// houses is then the sites' own t where it was fitted, else the prior's (at most 0.15), so that a first trial never widens what was judged.
    /// </summary>
    /// <param name="code">Retrofit.</param>
    /// <param name="catalogue">Catalogue with the prior.</param>
    /// <param name="evidence">Evidence by identifier; other retrofits and what does not count are passed over.</param>
    /// <param name="commonShare">Share of the prior's variance that is doubt about the mean, above 0 to 1.</param>
    /// <returns>The update; the prior itself where nothing counts.</returns>
    public static FactorUpdate Of(string code, Catalogue catalogue, IEnumerable<KeyValuePair<string, EvidenceFacts>> evidence, double commonShare = 0.5)
    {
        var (mean, sd) = (catalogue.Value(CatalogueKind.Retrofit, code, "factorMean", 1), catalogue.Value(CatalogueKind.Retrofit, code, "factorSd"));
        var counted = evidence.Where(e => e.Value.RetrofitCode == code && e.Value.Counted && e.Value.Check().Count == 0).OrderBy(e => e.Key, StringComparer.Ordinal).ToList();
        if (counted.Count == 0)
        {
            return new(code, mean, sd, null, mean, sd, [], FormattableString.Invariant($"Factor {mean:0.00} (sd {sd:0.00}), as the catalogue has it; no trial has spoken yet."));
        }

        var pool = SitePooling.Of([.. counted.GroupBy(e => e.Value.SiteKey ?? e.Key).Select(Site)]);
        var doubt = Max(1e-6, commonShare * sd * sd);
        var weight = doubt / (doubt + pool.MeanVariance);
        var after = mean + weight * (pool.Mean - mean);
        var between = pool.Spread * pool.Spread;
        var spread = Sqrt((1 - weight) * doubt + (pool.SpreadFitted ? between : Min(between, (1 - commonShare) * sd * sd)));
        return new(code, mean, sd, pool, after, spread, [.. counted.Select(e => e.Key)], FormattableString.Invariant(
            $"{pool.Sites} {(pool.Sites == 1 ? "site puts" : "sites put")} the factor at {pool.Mean:0.00} (sd {pool.PredictiveSd:0.00} for another house); with the catalogue's {mean:0.00} (sd {sd:0.00}) it becomes {after:0.00} (sd {spread:0.00})."));
    }

    /// <summary>The updates of every retrofit that has evidence which counts.</summary>
    /// <param name="catalogue">Catalogue with the priors.</param>
    /// <param name="evidence">Evidence by identifier.</param>
    /// <param name="commonShare">Share of the prior's variance that is doubt about the mean.</param>
    /// <returns>Updates by retrofit.</returns>
    public static IReadOnlyDictionary<string, FactorUpdate> All(Catalogue catalogue, IReadOnlyDictionary<string, EvidenceFacts> evidence, double commonShare = 0.5) =>
        evidence.Values.Where(e => e.Counted).Select(e => e.RetrofitCode).Distinct().Where(c => catalogue.Find(CatalogueKind.Retrofit, c) is not null).Order(StringComparer.Ordinal)
            .Select(c => Of(c, catalogue, evidence, commonShare)).Where(u => u.EvidenceIds.Count > 0).ToDictionary(u => u.RetrofitCode);

    /// <summary>The catalogue with the updated factors laid over its own, so that all that reads a factor reads the evidence.</summary>
    /// <param name="catalogue">Catalogue.</param>
    /// <param name="updates">Updates by retrofit.</param>
    /// <returns>The catalogue; the same one where there is no update.</returns>
    public static Catalogue Laid(Catalogue catalogue, IReadOnlyDictionary<string, FactorUpdate> updates) => updates.Count == 0 ? catalogue : catalogue.With(updates.Values.Select(u =>
    {
        CatalogueValue Value(double v) => new(v, "1", Status: ValueStatus.Computed, Source: u.Words);
        return catalogue.Find(CatalogueKind.Retrofit, u.RetrofitCode)! with
        {
            Values = new SortedDictionary<string, CatalogueValue>(StringComparer.Ordinal) { ["factorMean"] = Value(u.Mean), ["factorSd"] = Value(u.Sd) },
        };
    }));

    /// <summary>Pieces of one site are one site: their precision-weighted mean, with the deviation of the best of them, for what they share does not average out.</summary>
    private static (double Mean, double Sd) Site(IGrouping<string, KeyValuePair<string, EvidenceFacts>> pieces)
    {
        var weights = pieces.Select(p => 1 / (p.Value.FactorSd * p.Value.FactorSd)).ToArray();
        return (pieces.Select((p, i) => weights[i] * p.Value.FactorMean).Sum() / weights.Sum(), pieces.Min(p => p.Value.FactorSd));
    }
}
