namespace FarmPortfolio.Host.Studies;

/// <summary>Registers the queue of studies.</summary>
public static class StudiesSetup
{
    /// <summary>The reader of inputs and the queue that runs studies one after another.</summary>
    /// <param name="services">Services.</param>
    /// <returns>The services.</returns>
    public static IServiceCollection AddStudies(this IServiceCollection services) =>
        services.AddSingleton<PortfolioReader>().AddSingleton<FuturesShelf>().AddSingleton<PageShelf>().AddSingleton<SensitivityRuns>().AddSingleton<PriceTrialRuns>().AddSingleton<LendingRuns>().AddSingleton<StudyChanges>().AddSingleton<LongRuns>().AddSingleton<StudyJobs>().AddSingleton<StudyAgain>()
            .AddHostedService(s => s.GetRequiredService<StudyJobs>()).AddHostedService(s => s.GetRequiredService<StudyAgain>()).AddHostedService(s => s.GetRequiredService<LongRuns>());
}
