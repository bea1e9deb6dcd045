using FarmPortfolio.Engine.Economics;
using FarmPortfolio.Engine.Studies;
using FarmPortfolio.Engine.Tests.Studies;

namespace FarmPortfolio.Engine.Tests.Funding;

/// <summary>A study whose options save what is laid out path by path.</summary>
internal static class LaidOut
{
    public const int Paths = 1000;
    private static readonly StudyResult Real = StudyRun.Run(SmallPortfolio.Of(1), 1, null, CancellationToken.None).Result!;

    public static StudyResult Study(params (string House, double Outlay, Func<int, double> Saving)[] options)
    {
        var model = Real.Options[0];
        return Real with
        {
            Replicates = 10,
            Futures = Paths,
            SavingByPath = [.. options.Select(o => Enumerable.Range(0, Paths).Select(p => (float)o.Saving(p)).ToArray())],
            Options = [.. options.Select(o =>
            {
                var byPath = Enumerable.Range(0, Paths).Select(o.Saving).ToArray();
                return model with
                {
                    HouseId = o.House,
                    OutlayUsd = o.Outlay,
                    SavingUsd = Distribution.Of(byPath, 10),
                    LossShare = (double)byPath.Count(s => s < 0) / Paths,
                    Costs = model.Costs with { EligibleUsd = model.Costs.OutlayUsd },
                };
            })],
        };
    }
}
