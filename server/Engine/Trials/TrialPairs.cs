namespace FarmPortfolio.Engine.Trials;

/// <summary>The same hours in the control and in a treated house.</summary>
/// <param name="From">Begin.</param>
/// <param name="To">End.</param>
/// <param name="ControlKwh">Heat of the control.</param>
/// <param name="TreatedKwh">Heat of the treated house.</param>
/// <param name="ControlDegreeHours">Degree hours of the control to its measured inside temperature, K h.</param>
/// <param name="TreatedDegreeHours">Degree hours of the treated house, K h.</param>
/// <param name="OutsideC">Mean outside temperature, C.</param>
/// <param name="State">State of the retrofit.</param>
/// <param name="Block">Number of its 7-night block.</param>
/// <param name="LeftOut">Why it is left out; null = it counts.</param>
public sealed record TrialPair(
    DateTime From, DateTime To, double ControlKwh, double TreatedKwh, double ControlDegreeHours, double TreatedDegreeHours, double OutsideC, RetrofitState State, int Block, string? LeftOut)
{
    /// <summary>Hours.</summary>
    public double Hours => (To - From).TotalHours;

    /// <summary>Nights, a day of 24 hours each.</summary>
    public double Nights => Hours / 24;
}

/// <summary>Lays the intervals of two houses beside one another: between two moments at which both were read.</summary>
internal static class TrialPairs
{
    private const double TogetherHours = 3;
    private const double BlockDays = 7;

    /// <summary>The pairs.</summary>
    /// <param name="control">Control's intervals.</param>
    /// <param name="treated">Treated house's intervals.</param>
    /// <param name="controlEfficiency">Heat over fuel of the control's heater.</param>
    /// <param name="treatedEfficiency">Heat over fuel of the treated house's heater.</param>
    /// <param name="outside">Outside temperature where the notebook tells none.</param>
    /// <returns>Pairs in time.</returns>
    public static List<TrialPair> Of(
        IReadOnlyList<TrialInterval> control, IReadOnlyList<TrialInterval> treated, double controlEfficiency, double treatedEfficiency, Func<DateTime, DateTime, double> outside)
    {
        var pairs = new List<TrialPair>();
        if (control.Count == 0 || treated.Count == 0)
        {
            return pairs;
        }

        var first = treated[0].From;
        var (c, t) = (0, 0);
        while (c < control.Count && t < treated.Count)
        {
            var (ofControl, ofTreated) = (new List<TrialInterval> { control[c] }, new List<TrialInterval> { treated[t] });
            if (!Together(control[c].From, treated[t].From))
            {
                (c, t) = control[c].From < treated[t].From ? (c + 1, t) : (c, t + 1);
                continue;
            }

            while (!Together(ofControl[^1].To, ofTreated[^1].To))
            {
                if (ofControl[^1].To < ofTreated[^1].To)
                {
                    if (++c >= control.Count)
                    {
                        return pairs;
                    }

                    ofControl.Add(control[c]);
                }
                else
                {
                    if (++t >= treated.Count)
                    {
                        return pairs;
                    }

                    ofTreated.Add(treated[t]);
                }
            }

            pairs.Add(Pair(ofControl, ofTreated));
            (c, t) = (c + 1, t + 1);
        }

        return pairs;

        TrialPair Pair(List<TrialInterval> a, List<TrialInterval> b)
        {
            var (ca, cb) = (a.Select(Known).ToList(), b.Select(Known).ToList());
            var (from, to) = (b[0].From, b[^1].To);
            var reason = a.Concat(b).Select(i => i.LeftOut).FirstOrDefault(r => r is not null)
                ?? (b.Any(i => i.State != b[0].State) ? "the retrofit changed its state between two moments at which both houses were read" : null)
                ?? (cb.Any(i => double.IsNaN(i.OutsideC)) ? "no outside temperature stands beside it, and the station has none for these hours" : null);
            return new(from, to, ca.Sum(i => i.FuelKwh) * controlEfficiency, cb.Sum(i => i.FuelKwh) * treatedEfficiency, ca.Sum(i => i.DegreeHours), cb.Sum(i => i.DegreeHours),
                cb.Sum(i => i.OutsideC * i.Hours) / cb.Sum(i => i.Hours), b[0].State, (int)Math.Floor((from - first).TotalDays / BlockDays), reason);
        }

        TrialInterval Known(TrialInterval i) => double.IsNaN(i.OutsideC) ? i with { OutsideC = outside(i.From, i.To) } : i;
    }

    private static bool Together(DateTime a, DateTime b) => Math.Abs((a - b).TotalHours) <= TogetherHours;
}
