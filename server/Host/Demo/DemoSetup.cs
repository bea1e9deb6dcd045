using FarmPortfolio.Host.Accounts;
using FarmPortfolio.Host.Serving;
using FarmPortfolio.Host.Storage;
using FarmPortfolio.Host.Storage.Items;
using FarmPortfolio.Host.Studies;

namespace FarmPortfolio.Host.Demo;

/// <summary>Start-up's work on the data.</summary>
public static class DemoSetup
{
    /// <summary>Fills starter prices and, unless Demo:Enabled is false, the invented co-op, and asks for its first study.</summary>
    /// <param name="app">The host.</param>
    public static void FillDemo(this WebApplication app)
    {
        var (coops, items) = (app.Services.GetRequiredService<CoopStore>(), app.Services.GetRequiredService<ItemStore>());
        new StarterPrices(coops, items).Fill();
        if (app.Services.GetRequiredService<HostSettings>().DemoEnabled)
        {
            new DemoCoop(coops, app.Services.GetRequiredService<BlobStore>(), items).Fill();
            new DemoRounds(items, app.Services.GetRequiredService<DecisionStore>()).Fill();
            if (app.Services.GetRequiredService<StudyStore>().All(Viewer.Program, DemoCoop.Id).Count == 0)
            {
                app.Services.GetRequiredService<StudyJobs>().Start(Viewer.Program, DemoCoop.Id);
            }
        }
    }
}
