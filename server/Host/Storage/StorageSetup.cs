using FarmPortfolio.Host.Serving;
using FarmPortfolio.Host.Storage.Items;

namespace FarmPortfolio.Host.Storage;

/// <summary>Registers the stores.</summary>
public static class StorageSetup
{
    /// <summary>Stores over one SQLite file in <see cref="HostSettings.StorageFolder"/>.</summary>
    /// <param name="services">Services.</param>
    /// <returns>The services.</returns>
    public static IServiceCollection AddStorage(this IServiceCollection services)
    {
        services.AddSingleton(TimeProvider.System).AddSingleton<Ids>().AddSingleton<ChangeFeed>().AddSingleton<CoopStore>().AddSingleton<BlobStore>().AddSingleton<ItemStore>().AddSingleton<HistoryStore>().AddSingleton<DecisionStore>().AddSingleton<StudyStore>().AddSingleton<StudyInputStore>().AddSingleton<StudyAgainStore>().AddSingleton<UnitStore>();
        services.AddSingleton(s => new UploadStore(Path.Combine(s.GetRequiredService<HostSettings>().StorageFolder, "uploads"), s.GetRequiredService<HostSettings>().ImportMaxBytes, s.GetRequiredService<TimeProvider>()));
        services.AddHostedService<StartSweep>();
        return services.AddSingleton(s => new Database(Path.Combine(s.GetRequiredService<HostSettings>().StorageFolder, "farm-portfolio.db")));
    }
}
