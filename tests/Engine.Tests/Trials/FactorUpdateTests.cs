using FarmPortfolio.Engine.Retrofits;
using FarmPortfolio.Engine.Trials;

namespace FarmPortfolio.Engine.Tests.Trials;

public class FactorUpdateTests
{
    private static Dictionary<string, EvidenceFacts> Sites(params (double Mean, double Sd)[] sites) =>
        sites.Select((s, i) => (Key: $"ev_{i}", Facts: new EvidenceFacts { RetrofitCode = "foam", Kind = EvidenceKind.Trial, FactorMean = s.Mean, FactorSd = s.Sd })).ToDictionary(e => e.Key, e => e.Facts);

    private static FactorUpdate Update(params (double Mean, double Sd)[] sites) => FactorUpdate.Of("foam", Catalogue.BuiltIn, Sites(sites));

    [Fact]
    public void Without_evidence_the_catalogue_stands()
    {
        var update = Update();
        Assert.Equal((0.85, 0.20), (update.Mean, update.Sd));
        Assert.Same(Catalogue.BuiltIn, FactorUpdate.Laid(Catalogue.BuiltIn, FactorUpdate.All(Catalogue.BuiltIn, Sites())));
    }

    [Fact]
    public void One_site_follows_the_formula_worked_by_hand()
    {
        // doubt 0.5 x 0.20^2 = 0.02; the site's mean has 0.05^2 + 0.15^2 = 0.025; weight 0.02 / 0.045; spread sqrt(0.02 x 0.025 / 0.045 + 0.02), the prior's own spread between houses
        var update = Update((1.03, 0.05));
        Assert.Equal(0.85 + 0.02 / 0.045 * 0.18, update.Mean, 12);
        Assert.Equal(Math.Sqrt(0.02 * 0.025 / 0.045 + 0.02), update.Sd, 12);
        Assert.Equal(Math.Sqrt(0.05 * 0.05 + 2 * 0.15 * 0.15), update.Pool!.PredictiveSd, 12);
    }

    [Fact]
    public void One_splendid_trial_cannot_make_a_certain_forecast()
    {
        var update = Update((1.2, 0.01));
        Assert.InRange(update.Sd, 0.20 * Math.Sqrt(0.5), 0.20);
        Assert.InRange(update.Mean, 0.86, 1.1);
    }

    [Fact]
    public void A_first_trial_never_widens_what_was_judged() =>
        Assert.All(Catalogue.BuiltIn.Entries.Where(e => e.Kind == CatalogueKind.Retrofit && e.Values.ContainsKey("factorSd")), e =>
            Assert.True(FactorUpdate.Of(e.Code, Catalogue.BuiltIn, new Dictionary<string, EvidenceFacts> { ["ev"] = new() { RetrofitCode = e.Code, Kind = EvidenceKind.Trial, FactorMean = 1, FactorSd = 0.1 } }).Sd <= e.Values["factorSd"].Value, e.Code));

    [Fact]
    public void Many_sites_outweigh_the_catalogue_and_leave_the_spread_between_houses()
    {
        var update = Update([.. Enumerable.Range(0, 40).Select(i => (1.0 + 0.1 * (i % 2 == 0 ? 1 : -1), 0.02))]);
        Assert.Equal(1.0, update.Mean, 2);
        Assert.Equal(0.10, update.Sd, 2);
    }

    [Fact]
    public void What_is_set_aside_and_pieces_of_one_site_do_not_count_twice()
    {
        var evidence = Sites((1.0, 0.1), (1.0, 0.1), (1.0, 0.1));
        Assert.Equal(3, FactorUpdate.Of("foam", Catalogue.BuiltIn, evidence).Pool!.Sites);
        var oneSite = evidence.ToDictionary(e => e.Key, e => e.Value with { SiteKey = "hill" });
        Assert.Equal(1, FactorUpdate.Of("foam", Catalogue.BuiltIn, oneSite).Pool!.Sites);
        var aside = evidence.ToDictionary(e => e.Key, e => e.Value with { Counted = false, SetAsideReason = "the catalogue rests on it" });
        Assert.Null(FactorUpdate.Of("foam", Catalogue.BuiltIn, aside).Pool);
    }

    [Fact]
    public void The_catalogue_laid_over_holds_the_new_factor_and_nothing_else_changed()
    {
        var evidence = Sites((1.03, 0.05));
        var updates = FactorUpdate.All(Catalogue.BuiltIn, evidence);
        var laid = FactorUpdate.Laid(Catalogue.BuiltIn, updates);
        Assert.Equal(updates["foam"].Mean, laid.Value(CatalogueKind.Retrofit, "foam", "factorMean"));
        Assert.Equal(updates["foam"].Sd, laid.Value(CatalogueKind.Retrofit, "foam", "factorSd"));
        Assert.Equal(Catalogue.BuiltIn.Value(CatalogueKind.Retrofit, "foam", "lifeYears"), laid.Value(CatalogueKind.Retrofit, "foam", "lifeYears"));
        Assert.Equal(0.97, laid.Value(CatalogueKind.Retrofit, "curtain", "factorMean"));
    }

    [Theory]
    [InlineData(double.NaN, 0.1, "factorMean")]
    [InlineData(5, 0.1, "factorMean")]
    [InlineData(1, 0, "factorSd")]
    public void Figures_that_cannot_be_are_named(double mean, double sd, string field) =>
        Assert.Equal(field, Assert.Single(new EvidenceFacts { RetrofitCode = "foam", Kind = EvidenceKind.Judged, FactorMean = mean, FactorSd = sd }.Check()).Field);
}
