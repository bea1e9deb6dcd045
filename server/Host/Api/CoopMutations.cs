using FarmPortfolio.Engine;
using FarmPortfolio.Engine.Scenarios;
using FarmPortfolio.Engine.Weather;
using FarmPortfolio.Host.Storage;
using FarmPortfolio.Host.Storage.Items;
using GraphQL;

namespace FarmPortfolio.Host.Api;

/// <summary>A co-op to choose.</summary>
[Name("CoopChoice")]
public sealed record CoopChoiceView([property: Id] string Id, string Name, bool IsDemo, bool IsChosen);

/// <summary>What came of adding or renaming a co-op.</summary>
public sealed record CoopPayload([property: Id] string? CoopId, IEnumerable<FaultView> Faults);

/// <summary>The viewer's co-ops.</summary>
public sealed partial class Query
{
    /// <summary>Every co-op of the viewer, the demo last.</summary>
    public static IEnumerable<CoopChoiceView> Coops([FromServices] Register register) => register.Coops.All(register.Viewer).Select(c => new CoopChoiceView(c.Id, c.Name, c.IsDemo == 1, c.Id == register.Coop.Id));

    /// <summary>The co-op that keeps a farm, house, option, tank or meter, study or anything else with an identifier; null where there is none, or none of one co-op alone.</summary>
    public static CoopChoiceView? CoopOf([FromServices] Register register, [Id] string id)
    {
        var item = id.Split('~')[0];
        var coopId = register.Items.Where(register.Viewer, item)?.CoopId ?? register.Studies.Find(register.Viewer, item)?.CoopId;
        return Coops(register).FirstOrDefault(c => c.Id == coopId);
    }
}

/// <summary>Co-ops of one's own.</summary>
public sealed partial class Mutation
{
    private const int LongestName = 120;

    /// <summary>Adds an empty co-op with the default assumptions; on wish with the weather stations of another one, so that a first house can be reckoned at once.</summary>
    public static CoopPayload NewCoop([FromServices] Register register, string name, [Id] string? stationsFromCoopId, [Id] string requestId)
    {
        // made from the request, so that a request that is repeated finds what it began
        var id = "co_" + CanonicalJson.Sha256($"{register.Viewer.AccountId} {requestId}")[..32];
        if (CoopName(register, name, id) is { } fault)
        {
            return new(null, [FaultView.Of(fault)]);
        }

        var donor = stationsFromCoopId is null ? null : register.Coops.All(register.Viewer).FirstOrDefault(c => c.Id == stationsFromCoopId);
        if (stationsFromCoopId is not null && donor is null)
        {
            return new(null, [new("NOT_FOUND", "stationsFromCoopId", "There is no such co-op to take stations from.", "Reload the page.", null, null)]);
        }

        var firstSeason = int.Parse(register.Ids.Now()[..4], System.Globalization.CultureInfo.InvariantCulture);
        var stations = donor is null ? [] : register.Items.All<WeatherStationFacts>(register.Viewer, donor.Id, ItemKind.WeatherStation).Where(s => s.CoopId == donor.Id);
        List<ItemToSave> items =
        [
            new(ItemKind.ScenarioSet, null, null, new ScenarioSetFacts { FirstSeason = firstSeason }, new("Assumptions of the first study")),
            .. stations.Select(s => new ItemToSave(ItemKind.WeatherStation, null, null, s.Facts, s.Remarks with { Note = donor!.IsDemo == 1 ? "an invented record, taken from the example" : s.Remarks.Note })),
        ];
        register.Coops.Add(register.Viewer, id, name.Trim(), isDemo: false);
        var outcome = register.Items.Save(register.Viewer, id, $"{name.Trim()} begins", requestId, items);
        return new(outcome.ChangeId is null ? null : id, outcome.Faults.Select(FaultView.Of));
    }

    /// <summary>Gives the chosen co-op another name.</summary>
    public static CoopPayload RenameCoop([FromServices] Register register, string name)
    {
        if (register.Coop.IsDemo == 1)
        {
            return new(null, [new("NOT_ALLOWED", "name", "The example keeps its name, so that nobody takes it for a real co-op.", "Make a co-op of your own.", null, null)]);
        }

        if (CoopName(register, name, register.Coop.Id) is { } fault)
        {
            return new(null, [FaultView.Of(fault)]);
        }

        return register.Coops.Rename(register.Viewer, register.Coop.Id, name.Trim())
            ? new(register.Coop.Id, [])
            : new(null, [new("NOT_FOUND", "id", "There is no such co-op.", "Reload the page.", null, null)]);
    }

    private static Fault? CoopName(Register register, string name, string? own)
    {
        var typed = name.Trim();
        return typed.Length == 0 ? new("EMPTY", "name", "The co-op has no name.", "Give it a name.")
            : typed.Length > LongestName ? new("OUT_OF_RANGE", "name", $"The name has {typed.Length} letters.", $"Give a name of at most {LongestName}.")
            : register.Coops.All(register.Viewer).Any(c => c.Id != own && string.Equals(c.Name, typed, StringComparison.OrdinalIgnoreCase)) ? new("NAME_TAKEN", "name", $"There is a co-op \"{typed}\" already.", "Give another name, or choose that one.")
            : null;
    }
}
