using FarmPortfolio.Engine.Trials;

namespace FarmPortfolio.Published.Trials;

/// <summary>
/// Thirteen vaccine trials, a data set much used to check random-effects pooling: Colditz and others (1994), J. American Medical Association 271:698-702.
/// The fixed-effect mean of the log risk ratios, -0.4303, was read in the public checks of an open statistics package; the random-effects values by
/// DerSimonian and Laird's moments (tau2 0.3088, mean -0.7141) are from memory.
/// </summary>
public class SitePoolingTests
{
    private static readonly (int Ill, int Well, int IllControl, int WellControl)[] Trials =
    [
        (4, 119, 11, 128), (6, 300, 29, 274), (3, 228, 11, 209), (62, 13536, 248, 12619), (33, 5036, 47, 5761), (180, 1361, 372, 1079), (8, 2537, 10, 619),
        (505, 87886, 499, 87892), (29, 7470, 45, 7232), (17, 1699, 65, 1600), (186, 50448, 141, 27197), (5, 2493, 3, 2338), (27, 16886, 29, 17825),
    ];

    private static (double Mean, double Sd)[] Sites =>
        [.. Trials.Select(t => (Math.Log((double)t.Ill / (t.Ill + t.Well) / ((double)t.IllControl / (t.IllControl + t.WellControl))),
            Math.Sqrt(1.0 / t.Ill - 1.0 / (t.Ill + t.Well) + 1.0 / t.IllControl - 1.0 / (t.IllControl + t.WellControl))))];

    [Fact]
    public void Fixed_effect_mean_of_the_vaccine_trials_is_as_read()
    {
        var weights = Sites.Select(s => 1 / (s.Sd * s.Sd)).ToArray();
        var mean = Sites.Select((s, i) => s.Mean * weights[i]).Sum() / weights.Sum();
        Assert.True(Math.Abs(mean - -0.4303) < 5e-5, $"fixed effect: expected -0.4303, got {mean}, tolerance 5e-5");
    }

    [Fact]
    public void Random_effects_of_the_vaccine_trials_are_as_remembered()
    {
        var pool = SitePooling.Of(Sites);
        Assert.True(Math.Abs(pool.Spread * pool.Spread - 0.3088) < 5e-5, $"variance between trials: expected 0.3088, got {pool.Spread * pool.Spread}");
        Assert.True(Math.Abs(pool.Mean - -0.7141) < 5e-5, $"mean: expected -0.7141, got {pool.Mean}");
    }
}
