using System.Text.Json.Nodes;
using FarmPortfolio.Host.Storage;
using FarmPortfolio.Host.Storage.Items;

namespace FarmPortfolio.Host.Studies;

/// <summary>Names of a study's inputs as people would say them: a house with its farm, options with their house.</summary>
/// <param name="inputs">Inputs of one study, or of two.</param>
internal sealed class InputNames(IEnumerable<InputText> inputs)
{
    private static readonly string[] Parents = ["farmId", "houseId", "supplyGroupId"];
    private readonly Dictionary<string, InputText> byId = inputs.GroupBy(i => i.ItemId).ToDictionary(g => g.Key, g => g.Last());

    /// <summary>What an input is called.</summary>
    /// <param name="input">Input.</param>
    /// <returns>Words that name it among all farms.</returns>
    public string Of(InputText input) => input.Kind switch
    {
        ItemKind.Farm or ItemKind.House or ItemKind.SupplyGroup => Placed(input),
        ItemKind.Contract => Placed(input),
        ItemKind.FuelRecord => $"tickets and bills of {Parent(input)}",
        ItemKind.OptionSet => $"options of {Parent(input)}",
        ItemKind.Quote => $"a quote for {Parent(input)}",
        ItemKind.ScenarioSet => "the assumptions",
        _ => $"{input.Kind.Replace('_', ' ')} {Own(input)}".Trim(),
    };

    private string Placed(InputText input) => Parent(input) is { Length: > 0 } parent ? $"{parent}, {Own(input) ?? "unnamed"}" : Own(input) ?? "unnamed";

    private string Parent(InputText input)
    {
        var facts = JsonNode.Parse(input.Facts);
        var id = Parents.Select(p => (string?)facts?[p]).FirstOrDefault(p => p is not null);
        return id is not null && byId.TryGetValue(id, out var parent) ? Placed(parent) : string.Empty;
    }

    private static string? Own(InputText input) => input.Remarks is null ? null : CanonicalJson.Read<Remarks>(input.Remarks).Name;
}
