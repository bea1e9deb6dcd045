using FarmPortfolio.Engine;
using FarmPortfolio.Engine.Weather;
using FarmPortfolio.Host.Loading;
using FarmPortfolio.Host.Storage;
using FarmPortfolio.Host.Storage.Items;
using GraphQL;

namespace FarmPortfolio.Host.Api;

/// <summary>Import of a station's monthly normals.</summary>
public sealed partial class Mutation
{
    /// <summary>Looks at a station's monthly normals, and keeps them as a station of their own when asked and sound. All twelve months or none.</summary>
    public static ImportPayload ImportNormals([FromServices] Register register, [FromServices] UploadStore uploads, ImportInput input)
    {
        using var source = ImportSource.Open(register, uploads, input);
        if (source.Text is not { } text)
        {
            return source.Nothing;
        }

        var loaded = MonthlyNormals.Read(text, input.Unit);
        var faults = loaded.Faults.ToList();
        if (input.CheckOnly == false && input.LatitudeDeg is not (>= -66 and <= 66))
        {
            faults.Add(new("OUT_OF_RANGE", "latitudeDeg", "The station has no latitude between -66 and 66.", "Give degrees north, such as 43.6."));
        }

        if (loaded.Value is not { } normals)
        {
            return new(false, loaded.Rows, "Nothing could be read: twelve sound months are needed.", faults.Select(FaultView.Of));
        }

        var words = $"monthly normals: twelve means from {TemperatureUnits.Both(normals.MonthlyMeanC.Min())} to {TemperatureUnits.Both(normals.MonthlyMeanC.Max())}; unit: {normals.UnitWords}{(normals.DegreeDaysLookedAt ? "; degree days looked at, not kept" : string.Empty)}.";
        if (input.CheckOnly != false || faults.Any(f => f.Field == "latitudeDeg") || (loaded.LeavesOut && input.GoodRowsOnly != true))
        {
            return new(false, loaded.Rows, words, faults.Select(FaultView.Of)) { CanImport = true };
        }

        var name = source.NameOr(input.Name);
        var facts = new WeatherStationFacts { LatitudeDeg = input.LatitudeDeg!.Value, LongitudeDeg = 0, ElevationM = input.ElevationM ?? 0, MonthlyMeanC = normals.MonthlyMeanC, DailySpanK = normals.DailySpanK };
        var outcome = register.Items.Save(register.Viewer, register.Coop.Id, $"monthly normals of {name} are imported from {source.FileName}", input.RequestId, [new(ItemKind.WeatherStation, null, null, facts, new(name, Note: source.FileName))]);
        return source.Done(new(outcome.ChangeId is not null, loaded.Rows, words, [.. faults.Concat(outcome.Faults).Select(FaultView.Of)]));
    }
}
