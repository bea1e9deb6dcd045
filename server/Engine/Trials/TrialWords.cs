namespace FarmPortfolio.Engine.Trials;

/// <summary>What must be said beside a trial's answer.</summary>
internal static class TrialWords
{
    /// <summary>The sentences.</summary>
    public static IReadOnlyList<string> Of(TrialHouse house, RatioFit fit, IReadOnlyList<TrialPair> pairs, IReadOnlyList<TrialPair> use, IReadOnlyList<TrialPair> idle, bool idleKnown, bool nameplate, double? modelled)
    {
        var words = new List<string>();
        void Say(FormattableString text) => words.Add(FormattableString.Invariant(text));
        if (idleKnown)
        {
            Say($"{idle.Sum(p => p.Nights):0} idle nights show that house {house.Label} needs {Against(fit.Ratio)} the control when both stand as they are; that is taken off.");
        }
        else
        {
            Say($"Two houses are never alike, and {(idle.Count == 0 ? "no idle nights show" : FormattableString.Invariant($"{idle.Sum(p => p.Nights):0} idle nights are too few to show"))} how far: 10 % of the use is added to the doubt. Fourteen idle nights over 15 F of outside range would take it away.");
        }

        var broken = use.Where(p => p.State == RetrofitState.Broken).Sum(p => p.Nights);
        if (broken > 0)
        {
            Say($"{broken:0} {(Math.Round(broken) == 1 ? "night" : "nights")} on which it was broken or forgotten {(Math.Round(broken) == 1 ? "stays in: it belongs" : "stay in: they belong")} to what it saves.");
        }

        foreach (var group in pairs.Where(p => p.LeftOut is not null).GroupBy(p => p.LeftOut).OrderByDescending(g => g.Count()).ThenBy(g => g.Key, StringComparer.Ordinal))
        {
            Say($"Left out, {group.Count()} of {pairs.Count} intervals: {group.Key}.");
        }

        var longer = pairs.Count(p => p.LeftOut is null && p.Hours > 36);
        if (longer > 0)
        {
            Say($"{longer} {(longer == 1 ? "interval runs" : "intervals run")} over a missed day, taken as long as it is; nothing is filled in.");
        }

        var lift = use.Sum(p => p.TreatedDegreeHours) / use.Sum(p => p.Hours) - use.Sum(p => p.ControlDegreeHours) / use.Sum(p => p.Hours);
        if (Math.Abs(lift) > 0.3)
        {
            Say($"House {house.Label} was kept {Math.Abs(1.8 * lift):0.0} F ({Math.Abs(lift):0.0} K) {(lift > 0 ? "warmer" : "colder")} than the control: as run it saved {100 * fit.AsRunSaving:0} %, at equal inside temperature {100 * fit.Saving:0} %.");
        }

        if (nameplate)
        {
            Say($"Burner hours go by a nameplate's firing rate, known to 5 %; clock the meter once to know it.");
        }

        if (modelled is null)
        {
            Say($"The station has no record of these nights, so nothing is modelled and no factor can be carried over.");
        }

        return words;
    }

    private static string Against(double ratio) => FormattableString.Invariant($"{100 * Math.Abs(ratio - 1):0} % {(ratio >= 1 ? "more heat than" : "less heat than")}");
}
