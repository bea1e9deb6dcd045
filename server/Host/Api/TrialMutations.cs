using FarmPortfolio.Engine;
using FarmPortfolio.Engine.Trials;
using FarmPortfolio.Engine.Units;
using FarmPortfolio.Host.Loading;
using FarmPortfolio.Host.Storage.Items;
using GraphQL;

namespace FarmPortfolio.Host.Api;

/// <summary>What a house of a notebook is.</summary>
public sealed record TrialHouseInput(string Label, TrialRole Role, string? RetrofitCode, [property: Id] string HouseId, string? Unit, double? FiringRateKw, bool? RateClocked);

/// <summary>A trial notebook, to be looked at or kept.</summary>
public sealed record ImportTrialInput([property: Id] string RequestId, string FileName, string Text, string Name, string? Place, [property: Id] string? WeatherStationId, string? TemperatureUnit, IEnumerable<TrialHouseInput>? Houses, bool? GoodRowsOnly, bool? CheckOnly);

/// <summary>A house met in a notebook.</summary>
[Name("NotebookHouse")]
public sealed record NotebookHouseView(string Label, TrialMeasure Measure, string? Unit, int Readings, bool EverInUse);

/// <summary>What came of a notebook.</summary>
public sealed record ImportTrialPayload(bool Kept, int Rows, string Summary, IEnumerable<NotebookHouseView> Houses, IEnumerable<string> Answers, IEnumerable<FaultView> Faults);

/// <summary>Notebooks of trials.</summary>
public sealed partial class Mutation
{
    /// <summary>Looks at a trial notebook, and keeps it with the evidence it gives when asked and sound.</summary>
    public static ImportTrialPayload ImportTrial([FromServices] Register register, ImportTrialInput input)
    {
        using var text = new StringReader(input.Text);
        var loaded = NotebookFile.Read(text, input.FileName, string.IsNullOrEmpty(input.TemperatureUnit) ? null : input.TemperatureUnit);
        var faults = loaded.Faults.ToList();
        if (loaded.Value is not { } notebook)
        {
            return new(false, loaded.Rows, "Nothing could be read.", [], [], faults.Select(FaultView.Of));
        }

        var summary = $"{notebook.Layout}: {notebook.Readings.Count:#,0} readings of {notebook.Houses.Count} houses from {notebook.Readings.Min(r => r.At):yyyy-MM-dd} to {notebook.Readings.Max(r => r.At):yyyy-MM-dd}. {string.Join(' ', loaded.Notes)}".Trim();
        var houses = notebook.Houses.Select(h => new NotebookHouseView(h.Label, h.Measure, h.Unit, h.Readings, h.EverInUse)).ToList();
        ImportTrialPayload Answer(bool kept, IEnumerable<string> answers) => new(kept, loaded.Rows, summary, houses, answers, faults.Select(FaultView.Of));
        if (input.Houses is null)
        {
            return Answer(false, []);
        }

        var set = notebook.Houses.Select((h, i) => TrialHouses.Of(register, h, input.Houses.FirstOrDefault(x => string.Equals(x.Label, h.Label, StringComparison.OrdinalIgnoreCase)), faults)).ToList();
        if (set.Contains(null))
        {
            return Answer(false, []);
        }

        var readings = TrialReadings.Pack(notebook.Readings);
        var trial = new TrialFacts
        {
            WeatherStationId = string.IsNullOrEmpty(input.WeatherStationId) ? null : input.WeatherStationId,
            Houses = [.. set.OfType<TrialHouse>()],
            StartsOn = DateOnly.FromDateTime(notebook.Readings.Min(r => r.At)),
            EndsOn = DateOnly.FromDateTime(notebook.Readings.Max(r => r.At)),
            ReadingsSha256 = "not kept",
        };
        var report = TrialView.Report(register, trial, readings);
        faults.AddRange(report.Faults);
        var answers = report.Comparisons.Select(c => FormattableString.Invariant($"House {c.Label}: {100 * c.Saving.Value:0} % of the heat saved ({100 * c.Saving.Low:0} to {100 * c.Saving.High:0} %){(c.Factor is { } f ? FormattableString.Invariant($", {f.Value:0.00} of what is modelled") : string.Empty)}.")).ToList();
        if (input.CheckOnly != false || report.Comparisons.Count == 0 || (faults.Count > 0 && input.GoodRowsOnly != true))
        {
            return Answer(false, answers);
        }

        var id = register.Ids.New("tr");
        List<ItemToSave> items = [new(ItemKind.Trial, id, null, trial with { ReadingsSha256 = register.Blobs.Save(register.Viewer, readings) }, new(input.Name.Trim(), input.Place?.Trim(), input.FileName))];
        items.AddRange(report.Comparisons.Select(c => EvidenceFacts.Of(c, id)).OfType<EvidenceFacts>().Select(e => new ItemToSave(ItemKind.Evidence, null, null, e, new($"{input.Name.Trim()}{(string.IsNullOrWhiteSpace(input.Place) ? string.Empty : ", " + input.Place.Trim())}"))));
        var outcome = register.Items.Save(register.Viewer, register.Coop.Id, $"trial {input.Name.Trim()} is brought in from {input.FileName}", input.RequestId, items);
        faults.AddRange(outcome.Faults);
        return Answer(outcome.ChangeId is not null, answers);
    }
}

/// <summary>Houses of a notebook as the trial keeps them.</summary>
internal static class TrialHouses
{
    /// <summary>A house; null where something of it is not told, with the fault.</summary>
    internal static TrialHouse? Of(Register register, NotebookHouse met, TrialHouseInput? told, List<Fault> faults)
    {
        if (told is null || !register.Houses.TryGetValue(told.HouseId, out var house))
        {
            faults.Add(new("NO_HOUSE", met.Label, $"What stands behind house {met.Label} is not told.", "Choose the house of the register that it is, or that is built like it."));
            return null;
        }

        var fuel = register.Fuel(house.Facts);
        var unit = string.IsNullOrWhiteSpace(told.Unit) ? met.Unit : told.Unit;
        var kwh = met.Measure == TrialMeasure.BurnerHours ? told.FiringRateKw : unit is null ? null : HeatingValues.KwhPerUnit(fuel, unit.Trim(), register.Heating) ?? HeatingValues.KwhPerUnit(fuel, unit.Trim().ToLowerInvariant(), register.Heating);
        if (kwh is not > 0)
        {
            faults.Add(met.Measure == TrialMeasure.BurnerHours
                ? new("NO_RATE", met.Label, $"House {met.Label} is read in burner hours, and its firing rate is not told.", "Clock the meter over ten minutes of burning and give the rate in kW; a nameplate's rate will do, known to 5 %.")
                : new("UNKNOWN_UNIT", met.Label, $"{fuel} of house {met.Label} is not metered by the \"{unit}\".", $"Choose one of {string.Join(", ", HeatingValues.UnitsOf(fuel))}."));
            return null;
        }

        return new()
        {
            Label = met.Label,
            Role = told.Role,
            RetrofitCode = told.Role == TrialRole.Treated ? told.RetrofitCode : null,
            House = house.Facts with { RetrofitsInstalled = [.. house.Facts.RetrofitsInstalled.Where(r => r != told.RetrofitCode)] },
            Fuel = fuel,
            Measure = met.Measure,
            KwhPerUnit = kwh.Value,
            RateClocked = met.Measure != TrialMeasure.BurnerHours || told.RateClocked == true,
        };
    }
}
