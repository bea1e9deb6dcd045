namespace FarmPortfolio.Host.Storage.Items;

/// <summary>Kinds of items; the text is stored.</summary>
public static class ItemKind
{
    /// <summary>Farm.</summary>
    public const string Farm = "farm";

    /// <summary>House.</summary>
    public const string House = "house";

    /// <summary>Tank or meter.</summary>
    public const string SupplyGroup = "supply_group";

    /// <summary>Deliveries and bills.</summary>
    public const string FuelRecord = "fuel_record";

    /// <summary>Contract.</summary>
    public const string Contract = "contract";

    /// <summary>Weather station.</summary>
    public const string WeatherStation = "weather_station";

    /// <summary>Price series.</summary>
    public const string PriceSeries = "price_series";

    /// <summary>A co-op's own catalogue entry.</summary>
    public const string CatalogueEntry = "catalogue_entry";

    /// <summary>A house's options.</summary>
    public const string OptionSet = "option_set";

    /// <summary>Quote.</summary>
    public const string Quote = "quote";

    /// <summary>Assumptions.</summary>
    public const string ScenarioSet = "scenario_set";

    /// <summary>Trial of houses run side by side.</summary>
    public const string Trial = "trial";

    /// <summary>Evidence on a retrofit's saving.</summary>
    public const string Evidence = "evidence";

    /// <summary>A year of a farm's statements.</summary>
    public const string Statement = "statement";

    /// <summary>A loan against an option.</summary>
    public const string LoanCase = "loan_case";

    /// <summary>Funding round.</summary>
    public const string FundingRound = "funding_round";

    /// <summary>Award.</summary>
    public const string Award = "award";

    /// <summary>Kinds that a study reads.</summary>
    public static IReadOnlyList<string> Studied { get; } = [.. Kinds.KindTables.All.Where(t => t.Studied).Select(t => t.Kind)];
}

/// <summary>What of an item cannot move a number.</summary>
/// <param name="Name">Name.</param>
/// <param name="Place">Place.</param>
/// <param name="Note">Note.</param>
/// <param name="Supplier">Who quoted.</param>
/// <param name="Consent">What a farm lets others see.</param>
/// <param name="People">Names of people that facts know by a key.</param>
public sealed record Remarks(string? Name = null, string? Place = null, string? Note = null, string? Supplier = null, Accounts.Consent? Consent = null, IReadOnlyDictionary<string, string>? People = null);

/// <summary>An item as it holds now.</summary>
/// <typeparam name="T">Facts.</typeparam>
/// <param name="Id">Identifier.</param>
/// <param name="Revision">Revision from 1.</param>
/// <param name="ChangedUtc">When it was last changed.</param>
/// <param name="ChangedBy">By whom.</param>
/// <param name="Facts">Facts.</param>
/// <param name="Remarks">Remarks.</param>
/// <param name="FactsSha256">Hash of the facts.</param>
/// <param name="CoopId">Co-op; "shared" for what ships with the program.</param>
public sealed record Item<T>(string Id, long Revision, string ChangedUtc, string ChangedBy, T Facts, Remarks Remarks, string FactsSha256, string CoopId);

/// <summary>An item to be saved; facts null = deleted.</summary>
/// <param name="Kind">Kind.</param>
/// <param name="Id">Identifier; null = new.</param>
/// <param name="Expected">Revision it was made from; null = new, or whatever holds now.</param>
/// <param name="Facts">Facts.</param>
/// <param name="Remarks">Remarks.</param>
/// <param name="File">File it was read from, for faults.</param>
/// <param name="Line">Line it was read from, for faults.</param>
public sealed record ItemToSave(string Kind, string? Id, long? Expected, object? Facts, Remarks Remarks, string? File = null, int? Line = null);

/// <summary>One act of one person.</summary>
public sealed record ChangeRow
{
    /// <summary>Identifier.</summary>
    public string Id { get; init; } = string.Empty;

    /// <summary>Number within the co-op.</summary>
    public long Seq { get; init; }

    /// <summary>When.</summary>
    public string AtUtc { get; init; } = string.Empty;

    /// <summary>Who.</summary>
    public string By { get; init; } = string.Empty;

    /// <summary>What, in words.</summary>
    public string Said { get; init; } = string.Empty;

    /// <summary>The change it undoes; null = none.</summary>
    public string? UndoesId { get; init; }

    /// <summary>Items it touched.</summary>
    public long ItemCount { get; init; }
}

/// <summary>One revision in an item's history.</summary>
public sealed record RevisionRow
{
    /// <summary>Item.</summary>
    public string ItemId { get; init; } = string.Empty;

    /// <summary>Kind of the item.</summary>
    public string Kind { get; init; } = string.Empty;

    /// <summary>Revision from 1.</summary>
    public long Revision { get; init; }

    /// <summary>Its change.</summary>
    public string ChangeId { get; init; } = string.Empty;

    /// <summary>When.</summary>
    public string AtUtc { get; init; } = string.Empty;

    /// <summary>Who.</summary>
    public string By { get; init; } = string.Empty;

    /// <summary>What, in words.</summary>
    public string Said { get; init; } = string.Empty;

    /// <summary>The change it undoes; null = none.</summary>
    public string? UndoesId { get; init; }

    /// <summary>Facts; null = deleted.</summary>
    public string? Facts { get; init; }

    /// <summary>Remarks.</summary>
    public string? Remarks { get; init; }
}

/// <summary>What came of a save.</summary>
/// <param name="ChangeId">The change; null when nothing was kept.</param>
/// <param name="Ids">Identifiers in the order of what was saved.</param>
/// <param name="ConflictItemId">The item somebody else saved first; null = none.</param>
/// <param name="Faults">Faults; nothing was kept when there is one.</param>
public sealed record SaveOutcome(string? ChangeId, IReadOnlyList<string> Ids, string? ConflictItemId, IReadOnlyList<Engine.Fault> Faults)
{
    /// <summary>Nothing was kept.</summary>
    /// <param name="fault">Why.</param>
    /// <returns>The outcome.</returns>
    public static SaveOutcome Refused(Engine.Fault fault) => new(null, [], null, [fault]);
}
