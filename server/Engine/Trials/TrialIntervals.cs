namespace FarmPortfolio.Engine.Trials;

/// <summary>What a house used between two readings.</summary>
/// <param name="House">Index of the house.</param>
/// <param name="From">Reading before.</param>
/// <param name="To">Reading after.</param>
/// <param name="FuelKwh">Fuel burned, kWh; NaN where it is not known.</param>
/// <param name="InsideC">Mean inside temperature, C.</param>
/// <param name="OutsideC">Mean outside temperature, C; NaN = the notebook does not tell.</param>
/// <param name="State">State of the retrofit.</param>
/// <param name="LeftOut">Why it is left out; null = it counts.</param>
public sealed record TrialInterval(int House, DateTime From, DateTime To, double FuelKwh, double InsideC, double OutsideC, RetrofitState State, string? LeftOut)
{
    /// <summary>Hours.</summary>
    public double Hours => (To - From).TotalHours;

    /// <summary>Degree hours to the measured inside temperature, K h; 0 or more.</summary>
    public double DegreeHours => Math.Max(0, InsideC - OutsideC) * Hours;
}

/// <summary>Makes intervals of readings: a counter that falls starts a segment, a missed day makes a longer interval, nothing goes without a reason on record.</summary>
public static class TrialIntervals
{
    /// <summary>The intervals of a trial.</summary>
    /// <param name="trial">Trial.</param>
    /// <param name="readings">Readings.</param>
    /// <param name="faults">Takes what cannot be: times that run backwards.</param>
    /// <returns>Intervals by house, in time.</returns>
    public static IReadOnlyList<TrialInterval>[] Of(TrialFacts trial, IReadOnlyList<TrialReading> readings, ICollection<Fault> faults) =>
        [.. trial.Houses.Select((h, i) => OfHouse(trial, h, [.. readings.Where(r => r.House == i)], faults))];

    private static List<TrialInterval> OfHouse(TrialFacts trial, TrialHouse house, TrialReading[] readings, ICollection<Fault> faults)
    {
        var intervals = new List<TrialInterval>();
        TrialReading? start = null;
        var since = new List<TrialReading>();
        foreach (var reading in readings)
        {
            if (start is not null && reading.At <= (since.Count > 0 ? since[^1] : start).At)
            {
                faults.Add(new("TIME_BACKWARDS", "time", FormattableString.Invariant($"House {house.Label}: {reading.At:yyyy-MM-dd HH:mm} does not come after the reading before it."), "Put the rows of a house in order of time, one row a reading."));
                return [];
            }

            since.Add(reading);
            if (start is null)
            {
                (start, since) = (reading, []);
            }
            else if (!double.IsNaN(reading.Value))
            {
                intervals.Add(Interval(trial, house, start, since));
                (start, since) = (reading, []);
            }
        }

        return intervals;
    }

    private static TrialInterval Interval(TrialFacts trial, TrialHouse house, TrialReading start, List<TrialReading> since)
    {
        var end = since[^1];
        var quantity = house.Measure == TrialMeasure.Used ? end.Value : end.Value - start.Value;
        var (inside, outside) = (Mean(start, since, r => double.IsNaN(r.InsideC) ? r.SetPointC : r.InsideC), Mean(start, since, r => r.OutsideC));
        var day = DateOnly.FromDateTime(end.At);
        string? reason = trial.Exclusions.FirstOrDefault(x => x.Label == house.Label && day >= x.From && day <= x.To)?.Reason;
        reason ??= double.IsNaN(quantity) ? "the reading that begins it is missing" : null;
        reason ??= since.Any(r => r.NewSegment) ? "the counter was changed or set anew: a new segment begins" : null;
        reason ??= quantity < 0 ? "the counter reads less than before: it was changed or rolled over, and a new segment begins" : null;
        reason ??= since.Any(r => r.State != end.State) ? "the retrofit changed its state between two readings" : null;
        reason ??= double.IsNaN(inside) ? "neither an inside temperature nor a set point stands beside it" : null;
        return new(end.House, start.At, end.At, quantity >= 0 ? quantity * house.KwhPerUnit : double.NaN, inside, outside, end.State, reason);
    }

    private static double Mean(TrialReading start, List<TrialReading> since, Func<TrialReading, double> of)
    {
        var (sum, hours, from) = (0.0, 0.0, start.At);
        foreach (var reading in since)
        {
            var (value, span) = (of(reading), (reading.At - from).TotalHours);
            (sum, hours) = double.IsNaN(value) ? (sum, hours) : (sum + value * span, hours + span);
            from = reading.At;
        }

        return hours > 0 ? sum / hours : double.NaN;
    }
}
