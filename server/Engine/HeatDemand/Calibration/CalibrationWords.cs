using FarmPortfolio.Engine.Farms;
using static System.Math;

namespace FarmPortfolio.Engine.HeatDemand.Calibration;

/// <summary>Says in plain words what a fit means, what to check first, and what would raise the grade.</summary>
internal sealed class CalibrationWords(SupplyGroupFacts group, FuelRecordFacts? record, FuelUse use, int houses, int withoutWeather, bool normalsOnly = false)
{
    private const double Agrees = 0.10;
    private const double FarOff = 0.25;

    private readonly string subject = houses == 1 ? "the house" : "the houses";
    private readonly string s = houses == 1 ? "s" : string.Empty;

    /// <summary>Where nothing could be fitted.</summary>
    public GroupFit Nothing(IReadOnlyList<IntervalFit> intervals, double sd)
    {
        var some = use.Intervals.Count > 0;
        var verdict = houses == 0 ? "no house that can be reckoned hangs on this tank or meter"
            : record is null || record.Entries.Count == 0 ? "no deliveries and no bills yet"
            : !some ? "the lines do not make an interval yet: between two full fills, or two reads"
            : normalsOnly ? "the station is known by its monthly normals only, so the weather of the days billed is not known and the bills cannot be held against it"
            : withoutWeather == use.Intervals.Count ? "the station's record does not reach the days billed"
            : $"{subject} need{s} no heat on the days billed";
        var raise = some && normalsOnly ? "Bring in a daily or hourly record of the station, or of one near by, that reaches over the days billed, and choose it for the farm."
            : some && withoutWeather == use.Intervals.Count ? "Bring in the station's weather for the days billed." : "Bring in the deliveries or bills of one heating season, from full fill to full fill or read to read.";
        return new()
        {
            Use = use,
            Intervals = intervals,
            WithoutWeather = withoutWeather,
            Grade = some ? DataGrade.B : DataGrade.C,
            Sd = sd,
            Verdict = verdict,
            Checks = houses == 0 ? ["which houses hang on this tank or meter"] : [],
            Raise = [raise],
        };
    }

    /// <summary>Puts the words to a fit.</summary>
    public GroupFit Of(GroupFit fit)
    {
        var m = fit.Multiplier!;
        var off = m.Value - 1;
        var percent = Round(100 * Abs(off));
        var within = m.Low <= 1 && m.High >= 1;
        var verdict = !fit.Believed
            ? FormattableString.Invariant($"the bills would need {m.Value:0.00} times the heat of {subject} as described; outside 0.6 to 1.6 that is not believed, and nothing is changed by it")
            : Abs(off) <= Agrees ? $"these bills agree with {subject} as described"
            : within && Abs(off) <= FarOff ? FormattableString.Invariant($"these bills agree with {subject} as described as far as they can tell ({Signed(m.Low!.Value)} to {Signed(m.High!.Value)} %)")
            : off > 0 ? FormattableString.Invariant($"{subject} burn{s} {percent:0} % more than described") : FormattableString.Invariant($"{subject} burn{s} {percent:0} % less than described");
        return fit with { Verdict = verdict, Checks = Checks(fit, off, within), Raise = Raise(fit) };
    }

    private List<string> Checks(GroupFit fit, double off, bool within)
    {
        var checks = new List<string>();
        var miss = fit.Check is { ReckonedKwh: > 0 } c ? c.BilledKwh / c.ReckonedKwh - 1 : off;
        if (!fit.Believed || Abs(miss) > FarOff)
        {
            checks.AddRange(["other uses on the tank or meter", "dates heated", "set points, night and day", off > 0 ? "film torn, vents or dampers open" : "houses that stood empty", "the unit of the fuel figure"]);
        }
        else if (Abs(off) > Agrees && !within)
        {
            checks.AddRange(off > 0 ? ["air leaks, open vents and dampers", "set points, against a thermometer", "the meter, the tank's size, the unit"] : ["set points, against a thermometer", "houses that stood empty", "the meter, the tank's size, the unit"]);
        }

        if (fit is { BaseIsFitted: true, BaseKwhPerDay: { Low: > 0 } } && group.OtherUses.Count == 0 && group.BaseUseKwhPerDay is null)
        {
            checks.Add("what burns whatever the weather: name it (dwelling, hot water, a pilot light)");
        }

        checks.AddRange(fit.Intervals.Where(i => i.Outlying && Abs(i.ResidualKwh) > Agrees * i.FittedKwh).Take(3).Select(i => FormattableString.Invariant(
            $"{EntryLines.Day(i.Use.FromOn)} to {EntryLines.Day(i.Use.ToOn)}: {Abs(100 * i.ResidualKwh / Max(1, i.FittedKwh)):0} % {(i.ResidualKwh > 0 ? "more" : "less")} than the other bills lead one to expect")));
        return checks;
    }

    private List<string> Raise(GroupFit fit)
    {
        var raise = new List<string>();
        if (fit.Grade == DataGrade.A)
        {
            return raise;
        }

        var metered = fit.Intervals.Count(i => i.Use.Metered);
        if (metered < Calibrations.EnoughIntervals)
        {
            raise.Add($"{Calibrations.EnoughIntervals} intervals between full fills or actual reads; there {(metered == 1 ? "is 1" : $"are {metered}")}.");
        }

        if (metered < fit.Intervals.Count)
        {
            raise.Add("Readings in place of totals: tickets with full fills or gauge, or the bills themselves.");
        }

        if (fit.BestSeasonShare < Calibrations.FullSeason)
        {
            raise.Add(FormattableString.Invariant($"One whole heating season; the best told holds {100 * fit.BestSeasonShare:0} % of its heat."));
        }

        if (!fit.Believed)
        {
            raise.Add("An answer to what is asked above: the bills and the description cannot both be right.");
        }

        if (fit.Fit is { } g && Abs(g.NmbePct) > Goodness.MostNmbePct)
        {
            raise.Add(FormattableString.Invariant($"A bias within 5 %; it is {g.NmbePct:0.0} % (ASHRAE Guideline 14, monthly)."));
        }

        if (fit.Fit is { } f && f.CvRmsePct > Goodness.MostCvRmsePct)
        {
            raise.Add(FormattableString.Invariant($"A scatter within 15 %; it is {f.CvRmsePct:0.0} % (ASHRAE Guideline 14, monthly): look at the bills that stand out."));
        }

        if (use.Faults.Any(x => x.Holds))
        {
            raise.Add($"Answers to the {use.Faults.Count(x => x.Holds)} held lines.");
        }

        return raise;
    }

    private static string Signed(double factor) => FormattableString.Invariant($"{(factor < 1 ? "−" : "+")}{Abs(100 * (factor - 1)):0}");
}
