using FarmPortfolio.Engine.Retrofits;

namespace FarmPortfolio.Engine.HeatDemand;

/// <summary>What a study assumes of every house's balance.</summary>
/// <param name="CarryOver">Share of a day's surplus sun that serves the next night, 0 to 1.</param>
/// <param name="PurgeVolumesPerDay">Volumes of air a night vented against humidity, where a house tells none.</param>
/// <param name="LossLevel">Multiplier on every U-value before bills.</param>
public sealed record HeatSettings(double CarryOver = HeatDefaults.CarryOver, double PurgeVolumesPerDay = HeatDefaults.PurgeVolumesPerDay, double LossLevel = HeatDefaults.LossLevel);
