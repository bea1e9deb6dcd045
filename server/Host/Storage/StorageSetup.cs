using FarmPortfolio.Host.Demo;
using FarmPortfolio.Host.Storage.Items;
using FarmPortfolio.Host.Studies;

namespace FarmPortfolio.Host.Storage;

/// <summary>Registers the stores.</summary>
public static class StorageSetup
{
    /// <summary>Stores over one SQLite file in Storage:Folder (default: the user's local data folder).</summary>
    /// <param name="services">Services.</param>
    /// <param name="configuration">Settings.</param>
    /// <returns>The services.</returns>
    public static IServiceCollection AddStorage(this IServiceCollection services, IConfiguration configuration)
    {
        services.AddSingleton(TimeProvider.System).AddSingleton<Ids>().AddSingleton<CoopStore>().AddSingleton<ItemStore>().AddSingleton<StudyStore>();
        return services.AddSingleton(_ => new Database(Path.Combine(
            configuration["Storage:Folder"] ?? Path.Combine(Environment.GetFolderPath(Environment.SpecialFolder.LocalApplicationData), "farm-portfolio"), "farm-portfolio.db")));
    }

    /// <summary>The queue of studies.</summary>
    /// <param name="services">Services.</param>
    /// <returns>The services.</returns>
    public static IServiceCollection AddStudies(this IServiceCollection services) =>
        services.AddSingleton<PortfolioReader>().AddSingleton<StudyJobs>().AddHostedService(s => s.GetRequiredService<StudyJobs>());
}
