namespace FarmPortfolio.Engine.Farms;

/// <summary>What of a member business can move a number. Names, owners and consent are remarks and stand elsewhere.</summary>
public sealed record FarmFacts
{
    /// <summary>The station whose winters this farm's houses meet; null = not known yet.</summary>
    public string? WeatherStationId { get; init; }

    /// <summary>Height of the farm above sea level in metres; null = as the station.</summary>
    public double? ElevationM { get; init; }

    /// <summary>Sales of a year in whole cents; null = not told.</summary>
    public long? SalesCents { get; init; }

    /// <summary>Groups the farm claims under a round's rules, by the rule's own word.</summary>
    public IReadOnlyList<string> Groups { get; init; } = [];

    /// <summary>Set of farms that caps count as one; null = stands alone.</summary>
    public string? RelatedKey { get; init; }

    /// <summary>Wage for watching and upkeep in US dollars an hour; null = the study's default.</summary>
    public double? WageUsdPerHour { get; init; }

    /// <summary>What electricity costs the farm in US dollars a kWh; null = the study's default.</summary>
    public double? ElectricityUsdPerKwh { get; init; }

    /// <summary>Date the farm joined; null = not told.</summary>
    public DateOnly? MemberSinceOn { get; init; }

    /// <summary>The farm without what only rounds ask of it, which is read when a round is drawn up: no number of a study depends on that. A method, so that it is never written among the facts.</summary>
    /// <returns>The facts that a study reads.</returns>
    public FarmFacts ForStudies() => this with { RelatedKey = null, MemberSinceOn = null, Groups = [] };
}
