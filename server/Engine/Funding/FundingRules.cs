namespace FarmPortfolio.Engine.Funding;

/// <summary>What a round counts.</summary>
public enum Merit
{
    /// <summary>Members' net saving a season.</summary>
    NetSaving,

    /// <summary>Heat saved.</summary>
    Energy,

    /// <summary>CO2 not emitted.</summary>
    Co2,

    /// <summary>Members' net saving a season in the worst tenth of the futures: for a co-op that would rather not lose than win.</summary>
    BadYears,
}

/// <summary>A house pinned to an option, or left out, with the reason.</summary>
/// <param name="HouseId">House.</param>
/// <param name="OptionKey">Option; null = the whole house.</param>
/// <param name="Reason">Why.</param>
public sealed record Pin(string HouseId, string? OptionKey, string Reason);

/// <summary>The rules of a round. Money in US dollars, shares 0 to 1.</summary>
public sealed record FundingRules
{
    /// <summary>Money of the round.</summary>
    public double BudgetUsd { get; init; } = 50000;

    /// <summary>Share held for overruns and errors.</summary>
    public double ReserveShare { get; init; } = 0.10;

    /// <summary>Share of the eligible cost that a grant covers.</summary>
    public double CostShare { get; init; } = 0.60;

    /// <summary>Most a house gets.</summary>
    public double HouseCapUsd { get; init; } = 9000;

    /// <summary>Most a farm gets.</summary>
    public double FarmCapUsd { get; init; } = 14000;

    /// <summary>Grants below this are not offered.</summary>
    public double MinimumGrantUsd { get; init; } = 250;

    /// <summary>An option must have paid itself back, and stay so, by this season.</summary>
    public int PaybackSeasons { get; init; } = 10;

    /// <summary>In at least this share of the futures.</summary>
    public double Confidence { get; init; } = 0.60;

    /// <summary>What counts.</summary>
    public Merit Merit { get; init; } = Merit.NetSaving;

    /// <summary>Pinned houses.</summary>
    public IReadOnlyList<Pin> Pinned { get; init; } = [];

    /// <summary>Houses or options left out.</summary>
    public IReadOnlyList<Pin> Excluded { get; init; } = [];

    /// <summary>What can be given now.</summary>
    public double AvailableUsd => BudgetUsd * (1 - ReserveShare);

    /// <summary>All that is wrong with the rules.</summary>
    /// <returns>Faults; empty = usable.</returns>
    public IReadOnlyList<Fault> Check()
    {
        var faults = new List<Fault>();
        void Range(string field, double value, double low, double high, string what)
        {
            if (!(value >= low && value <= high))
            {
                faults.Add(new("OUT_OF_RANGE", field, $"The {what} of {value:0.##} is outside {low:0.##} to {high:0.##}.", $"Give a {what} between {low:0.##} and {high:0.##}."));
            }
        }

        Range("budgetUsd", BudgetUsd, 0, 1e9, "budget");
        Range("reserveShare", ReserveShare, 0, 0.9, "reserve");
        Range("costShare", CostShare, 0.01, 1, "cost share");
        Range("houseCapUsd", HouseCapUsd, 0, 1e8, "cap a house");
        Range("farmCapUsd", FarmCapUsd, 0, 1e8, "cap a farm");
        Range("paybackSeasons", PaybackSeasons, 1, 30, "season of the confidence rule");
        Range("confidence", Confidence, 0, 1, "confidence");
        return faults;
    }
}
