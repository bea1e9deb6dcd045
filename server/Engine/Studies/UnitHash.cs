using System.Collections.Concurrent;
using System.Runtime.InteropServices;
using System.Security.Cryptography;
using System.Text;
using System.Text.Json;
using System.Text.Json.Nodes;
using FarmPortfolio.Engine.Retrofits;
using FarmPortfolio.Engine.Weather;

namespace FarmPortfolio.Engine.Studies;

/// <summary>
/// Names a unit by all that its result depends on: the version of the numbers, the futures, the assumptions, and every item it reads.
/// Equal name, equal result, on any machine and in any study.
/// </summary>
/// <param name="portfolio">All that the study reads.</param>
/// <param name="futures">Futures.</param>
internal sealed class UnitHash(Portfolio portfolio, StudyFutures futures)
{
    private static readonly JsonSerializerOptions Plain = new() { IncludeFields = true, NumberHandling = System.Text.Json.Serialization.JsonNumberHandling.AllowNamedFloatingPointLiterals };
    private readonly ConcurrentDictionary<string, string> winters = new(StringComparer.Ordinal);
    private readonly ConcurrentDictionary<string, string> retrofits = new(StringComparer.Ordinal);
    private readonly string common = Sha(Text(portfolio.Set) + Text(portfolio.Catalogue.Entries.Where(e => e.Kind != CatalogueKind.Retrofit)));

    /// <summary>The name of a unit.</summary>
    /// <param name="houses">Its houses, in order of their ids.</param>
    /// <param name="groups">Its tanks and meters, in order of their ids.</param>
    /// <returns>SHA-256 in 64 hex digits.</returns>
    public string Of(IReadOnlyList<StudyHouse> houses, IReadOnlyList<string> groups)
    {
        var text = new StringBuilder();
        void Add(string what, string id, object? facts) => text.Append(what).Append(' ').Append(id).Append(' ').Append(facts is string s ? s : Text(facts)).Append('\n');
        Add("numbers", string.Empty, StudyRun.NumbersVersion);
        Add("futures", futures.Sha256, common);
        foreach (var house in houses)
        {
            Add("house", house.Id, house.Model.Facts);
            Add("loss", house.Id, house.Loss);
            Add("options", house.Id, house.Options);
            foreach (var code in house.Options.SelectMany(o => o.Parts).Concat(house.Model.Facts.RetrofitsInstalled).Distinct().Order(StringComparer.Ordinal))
            {
                Add("retrofit", code, Retrofit(code));
            }

            foreach (var (key, moved) in house.Switches.OrderBy(s => s.Key, StringComparer.Ordinal))
            {
                Add("switch", key, $"{moved.Line?.GroupId} {moved.IsNew} {string.Join(' ', moved.Replaces.Select(r => r.GroupId))}");
            }

            Add("winters", house.Farm.WeatherStationId!, Winters(house.Farm.WeatherStationId!, house.Pool));
        }

        foreach (var farm in houses.Select(h => h.Model.Facts.FarmId).Distinct().Order(StringComparer.Ordinal))
        {
            Add("farm", farm, portfolio.Farms[farm].ForStudies());
            Add("quotes", farm, portfolio.Quotes.GetValueOrDefault(farm));
        }

        foreach (var group in groups)
        {
            Add("supply", group, portfolio.SupplyGroups[group]);
            Add("contract", group, portfolio.Contracts.GetValueOrDefault(group));
            Add("contracts", group, portfolio.ContractsById.Where(c => c.Value.SupplyGroupId == group).OrderBy(c => c.Key, StringComparer.Ordinal));
            foreach (var series in portfolio.ContractsById.Values.Concat(portfolio.Contracts.Values).Where(c => c.SupplyGroupId == group).Select(c => c.PriceSeriesId).OfType<string>().Distinct().Order(StringComparer.Ordinal))
            {
                Add("series", series, portfolio.OwnSeries.GetValueOrDefault(series));
                Add("index", group, portfolio.Prices.GetValueOrDefault(portfolio.SupplyGroups[group].Fuel));

                // units of before were reckoned without it
                Add("off the line", series, "drawn");
            }

            Add("record", group, portfolio.FuelRecords.GetValueOrDefault(group));
        }

        return Sha(text.ToString());
    }

    private string Retrofit(string code) => retrofits.TryGetValue(code, out var text) ? text : retrofits[code] = Text(portfolio.Catalogue.Find(CatalogueKind.Retrofit, code));

    private static string Sha(string text) => Convert.ToHexStringLower(SHA256.HashData(Encoding.UTF8.GetBytes(text)));

    private string Winters(string station, IReadOnlyList<WeatherYear> pool)
    {
        if (!winters.TryGetValue(station, out var sha))
        {
            using var hash = IncrementalHash.CreateHash(HashAlgorithmName.SHA256);
            foreach (var year in pool)
            {
                hash.AppendData(MemoryMarshal.AsBytes<double>(year.TempC));
                hash.AppendData(MemoryMarshal.AsBytes<double>(year.RadiationWPerM2));
            }

            winters[station] = sha = Convert.ToHexStringLower(hash.GetHashAndReset());
        }

        return sha;
    }

    private static string Text(object? facts) => Sorted(JsonSerializer.SerializeToNode(facts, Plain))?.ToJsonString() ?? "none";

    private static JsonNode? Sorted(JsonNode? node) => node switch
    {
        JsonObject o => new JsonObject(o.OrderBy(p => p.Key, StringComparer.Ordinal).Select(p => KeyValuePair.Create(p.Key, Sorted(p.Value)))),
        JsonArray a => new JsonArray([.. a.Select(Sorted)]),
        null => null,
        _ => node.DeepClone(),
    };
}
