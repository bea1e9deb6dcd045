using FarmPortfolio.Engine.HeatDemand;
using FarmPortfolio.Engine.Retrofits;

namespace FarmPortfolio.Engine.Trials;

/// <summary>What cannot be in a trial; the field is "control", the label of a treated house, or the part of the trial.</summary>
public static class TrialChecks
{
    /// <summary>Faults of what the trial is.</summary>
    /// <param name="trial">Trial.</param>
    /// <param name="catalogue">Catalogue.</param>
    /// <returns>Faults; empty = none.</returns>
    public static IReadOnlyList<Fault> Of(TrialFacts trial, Catalogue catalogue)
    {
        var faults = new List<Fault>();
        var controls = trial.Houses.Count(h => h.Role == TrialRole.Control);
        if (controls != 1)
        {
            faults.Add(new("NO_CONTROL", "houses", $"{controls} houses are left as they stand.", "Mark exactly one house as the control."));
        }

        if (trial.Houses.All(h => h.Role == TrialRole.Control))
        {
            faults.Add(new("NO_TREATED", "houses", "No house has a retrofit.", "Mark one house or more as treated and say with what."));
        }

        foreach (var label in trial.Houses.GroupBy(h => h.Label, StringComparer.OrdinalIgnoreCase).Where(g => g.Count() > 1).Select(g => g.Key))
        {
            faults.Add(new("DOUBLED", "houses", $"Two houses are called {label}.", "Give each a name of its own."));
        }

        foreach (var house in trial.Houses)
        {
            if (house.Role == TrialRole.Treated && (house.RetrofitCode is null || catalogue.Find(CatalogueKind.Retrofit, house.RetrofitCode) is null))
            {
                faults.Add(new("UNKNOWN_RETROFIT", house.Label, $"House {house.Label} is treated with \"{house.RetrofitCode}\", which the catalogue does not have.", "Name a retrofit of the catalogue, such as curtain."));
            }

            if (!(house.KwhPerUnit > 0) || !double.IsFinite(house.KwhPerUnit))
            {
                faults.Add(new("OUT_OF_RANGE", house.Label, $"House {house.Label}: one unit read holds no heat.", "Give the unit of the meter, or a firing rate above 0."));
            }

            var (model, modelFaults) = HouseModels.Of(house.House, catalogue, new(), trial.StartsOn.Year, house.Fuel);
            faults.AddRange(modelFaults.Select(f => f with { Field = house.Label, Message = $"House {house.Label}: {f.Message}" }));
            if (model is not null && house is { Role: TrialRole.Treated, RetrofitCode: { } code } && catalogue.Find(CatalogueKind.Retrofit, code) is not null)
            {
                faults.AddRange(OptionModels.Of(model, new("trial", [code])).Faults.Select(f => f with { Field = house.Label, Message = $"House {house.Label}: {f.Message}" }));
            }
        }

        if (trial.EndsOn < trial.StartsOn)
        {
            faults.Add(new("TIME_BACKWARDS", "endsOn", "The trial ends before it begins.", "Give the days in order."));
        }

        faults.AddRange(trial.Exclusions.Where(x => string.IsNullOrWhiteSpace(x.Reason)).Select(x => new Fault("REASON_NEEDED", "exclusions", $"House {x.Label}: nights from {x.From:yyyy-MM-dd} are set aside without a reason.", "Say why; nothing is left out silently.")));
        return faults;
    }

    /// <summary>Faults of nights to be set aside.</summary>
    /// <param name="trial">Trial.</param>
    /// <param name="nights">Nights of a house, by the day they end on.</param>
    /// <returns>Faults; empty = none.</returns>
    public static IReadOnlyList<Fault> Of(TrialFacts trial, TrialExclusion nights)
    {
        var faults = new List<Fault>();
        if (trial.Houses.All(h => h.Label != nights.Label))
        {
            faults.Add(new("NO_HOUSE", "house", $"The trial has no house {nights.Label}.", $"Choose one of {string.Join(", ", trial.Houses.Select(h => h.Label))}."));
        }

        if (nights.To < nights.From)
        {
            faults.Add(new("TIME_BACKWARDS", "to", $"The stretch runs backwards: {nights.From:yyyy-MM-dd} to {nights.To:yyyy-MM-dd}.", "Give the first morning, then the last."));
        }
        else if (nights.To < trial.StartsOn || nights.From > trial.EndsOn)
        {
            faults.Add(new("OUT_OF_RANGE", "from", $"The trial ran from {trial.StartsOn:yyyy-MM-dd} to {trial.EndsOn:yyyy-MM-dd}.", "Give mornings of those days."));
        }

        if (string.IsNullOrWhiteSpace(nights.Reason))
        {
            faults.Add(new("REASON_NEEDED", "reason", "The nights are set aside without a reason.", "Say why; nothing is left out silently."));
        }

        return faults;
    }

    /// <summary>Faults of what was read.</summary>
    /// <param name="trial">Trial.</param>
    /// <param name="intervals">Intervals by house.</param>
    /// <returns>Faults; empty = none.</returns>
    public static IReadOnlyList<Fault> Of(TrialFacts trial, IReadOnlyList<TrialInterval>[] intervals)
    {
        var faults = new List<Fault>();
        for (var i = 0; i < intervals.Length; i++)
        {
            var house = trial.Houses[i];
            var field = house.Role == TrialRole.Control ? "control" : house.Label;
            var counted = intervals[i].Where(x => x.LeftOut is null).ToList();
            var who = house.Role == TrialRole.Control ? $"The control house {house.Label}" : $"House {house.Label}";
            if (counted.Count == 0)
            {
                faults.Add(new("NO_READINGS", field, $"{who} has no interval between two readings.", "Give two readings or more, each with a time."));
            }
            else if (counted.Sum(x => x.FuelKwh) <= 0)
            {
                faults.Add(new("NO_FUEL", field, $"{who} used no fuel from {counted[0].From:yyyy-MM-dd} to {counted[^1].To:yyyy-MM-dd}.", "Check the meter and which house it serves; a house without heat shows nothing."));
            }
            else if (counted.Count(x => x.InsideC <= x.OutsideC) is var cold && 2 * cold > counted.Count)
            {
                faults.Add(new("INSIDE_COLDER", field, $"{who} is colder inside than outside in {cold} of {counted.Count} intervals.", "Check which column is inside, and its unit."));
            }
        }

        return faults;
    }
}
