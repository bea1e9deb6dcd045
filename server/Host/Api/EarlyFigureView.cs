using FarmPortfolio.Engine.Studies;
using GraphQL;

namespace FarmPortfolio.Host.Api;

/// <summary>A figure shown while a study runs: of this option alone and final for it, but the study as a whole is not done and nothing is kept if it is cancelled.</summary>
[Name("EarlyFigure")]
public sealed record EarlyFigureView([property: Id] string OptionId, [property: Id] string HouseId, double SavingP50Usd, double NpvP50Usd, int? LastingP50Season, double NeverShare)
{
    internal static IReadOnlyList<EarlyFigureView> Of(StudyProgress? progress) =>
        [.. (progress?.Early ?? []).Select(o => new EarlyFigureView($"{o.HouseId}~{o.Key}", o.HouseId, o.SavingUsd.P50, o.NpvUsd.P50, o.Lasting.SeasonOf(0.5), o.Lasting.NeverShare))];
}
