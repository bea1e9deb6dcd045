using FarmPortfolio.Engine.HeatDemand;
using FarmPortfolio.Engine.Retrofits;
using FarmPortfolio.Engine.Weather;
using MathNet.Numerics.Distributions;
using static System.Math;

namespace FarmPortfolio.Engine.Trials;

/// <summary>
/// What a trial shows: treated houses against the control on degree hours to the inside temperature measured in each, with intervals by 7-night blocks
/// (after ASHRAE Guideline 14 and IPMVP in principle), and the factor measured over modelled that carries over to other houses.
/// </summary>
public static class TrialAnalysis
{
    /// <summary>Spread of a house about its neighbour of the same build, share of use, where no idle nights show it; common practice, no source.</summary>
    public const double UnlikeHousesSd = 0.10;

    /// <summary>Idle nights that are needed to tell how alike two houses are; common practice, no source.</summary>
    public const double IdleNights = 14;

    /// <summary>Range of outside temperature that idle nights must span, K (15 F); common practice, no source.</summary>
    public const double IdleRangeK = 15 / 1.8;

    /// <summary>Spread of a nameplate firing rate, share; common practice, no source.</summary>
    public const double NameplateSd = 0.05;

    private const int FewestBlocks = 3;

    /// <summary>Works a trial out.</summary>
    /// <param name="trial">Trial.</param>
    /// <param name="readings">Its readings.</param>
    /// <param name="years">Seasons of its station, by season year; empty = none, so nothing is modelled.</param>
    /// <param name="catalogue">Catalogue.</param>
    /// <param name="settings">What is assumed of every house.</param>
    /// <returns>The report; faults say what stopped a comparison.</returns>
    public static TrialReport Of(TrialFacts trial, IReadOnlyList<TrialReading> readings, IReadOnlyDictionary<int, WeatherYear> years, Catalogue catalogue, HeatSettings settings)
    {
        var faults = new List<Fault>(TrialChecks.Of(trial, catalogue));
        var comparisons = new List<TrialComparison>();
        if (faults.Count > 0)
        {
            return new(comparisons, faults);
        }

        var intervals = TrialIntervals.Of(trial, readings, faults);
        faults.AddRange(TrialChecks.Of(trial, intervals));
        var control = trial.Houses.Select((h, i) => (h, i)).First(h => h.h.Role == TrialRole.Control).i;
        var models = trial.Houses.Select(h => HouseModels.Of(h.House, catalogue, settings, trial.StartsOn.Year, h.Fuel).Model!).ToArray();
        if (faults.Any(f => f.Field is "control" || f.Code == "TIME_BACKWARDS"))
        {
            return new(comparisons, faults);
        }

        for (var i = 0; i < trial.Houses.Count; i++)
        {
            if (trial.Houses[i].Role == TrialRole.Treated && !faults.Any(f => f.Field == trial.Houses[i].Label))
            {
                var pairs = TrialPairs.Of(intervals[control], intervals[i], models[control].Heaters[0].Efficiency, models[i].Heaters[0].Efficiency, (from, to) => TrialModel.MeanC(years, from, to));
                if (Compare(trial, (control, i), models, pairs, years, faults) is { } comparison)
                {
                    comparisons.Add(comparison);
                }
            }
        }

        return new(comparisons, faults);
    }

    private static TrialComparison? Compare(TrialFacts trial, (int Control, int Treated) at, HouseModel[] models, List<TrialPair> pairs, IReadOnlyDictionary<int, WeatherYear> years, List<Fault> faults)
    {
        var house = trial.Houses[at.Treated];
        var counted = pairs.Where(p => p.LeftOut is null).ToList();
        var (use, idle) = (counted.Where(p => p.State != RetrofitState.Idle).ToList(), counted.Where(p => p.State == RetrofitState.Idle).ToList());
        if (use.Select(p => p.Block).Distinct().Count() < FewestBlocks || use.Sum(p => p.ControlKwh) <= 0)
        {
            faults.Add(new("TOO_SHORT", house.Label, FormattableString.Invariant($"House {house.Label} has {use.Sum(p => p.Nights):0} nights in use beside the control, in {use.Select(p => p.Block).Distinct().Count()} weeks."), "Read both houses at the same times for three weeks or more with the retrofit in use."));
            return null;
        }

        var idleRange = idle.Count > 0 ? idle.Max(p => p.OutsideC) - idle.Min(p => p.OutsideC) : 0;
        var idleKnown = idle.Sum(p => p.Nights) >= IdleNights && idleRange >= IdleRangeK && idle.Sum(p => p.ControlKwh) > 0;
        var station = counted.Select(p => (p.OutsideC, Station: TrialModel.MeanC(years, p.From, p.To))).Where(p => !double.IsNaN(p.Station)).ToList();
        var model = new TrialModel(years, station.Count > 0 ? station.Average(p => p.OutsideC - p.Station) : 0);
        double Sum(OptionModel option, IEnumerable<TrialPair> of) => of.Sum(p => model.Kwh(option, p.From, p.To));
        var (asItStands, control) = (OptionModels.AsItStands(models[at.Treated]), OptionModels.AsItStands(models[at.Control]));
        var with = OptionModels.Of(models[at.Treated], new("trial", [house.RetrofitCode!])).Model!;
        var (modelledBase, modelledControl) = (Sum(asItStands, use), Sum(control, use));
        var modelled = modelledBase > 0 ? 1 - Sum(with, use) / modelledBase : (double?)null;
        var ratio = modelledBase > 0 && modelledControl > 0 ? modelledBase / modelledControl : models[at.Treated].Geometry.FloorM2 / models[at.Control].Geometry.FloorM2;

        var fit = new RatioFit(use, idleKnown ? idle : [], ratio);
        var unlike = idleKnown ? 0 : UnlikeHousesSd * UnlikeHousesSd;
        var rates = idleKnown ? 0 : NameplateSd * NameplateSd * new[] { trial.Houses[at.Control], house }.Count(h => h.Measure == TrialMeasure.BurnerHours && !h.RateClocked);
        Measured Interval(double saving, double sampling, double extra)
        {
            var (sd, all) = (Abs(1 - saving) * Sqrt(sampling + extra), sampling + extra);
            var freedom = sampling > 0 ? fit.DegreesOfFreedom * (all / sampling) * (all / sampling) : 1e6;
            var half = StudentT.InvCDF(0, 1, Min(freedom, 1e6), 0.95) * sd;
            return new(saving, saving - half, saving + half, sd);
        }

        var saving = Interval(fit.Saving, fit.RelativeVariance(use), unlike + rates);
        var factor = modelled is > 0.01 ? new Measured(saving.Value / modelled.Value, saving.Low / modelled.Value, saving.High / modelled.Value, saving.Sd / modelled.Value) : null;
        return new()
        {
            Label = house.Label,
            RetrofitCode = house.RetrofitCode!,
            Pairs = pairs,
            Saving = saving,
            AsRunSaving = fit.AsRunSaving,
            SavedKwh = new(saving.Value * fit.ReferenceKwh, saving.Low * fit.ReferenceKwh, saving.High * fit.ReferenceKwh, saving.Sd * fit.ReferenceKwh),
            ModelledSaving = modelled,
            Factor = factor,
            HouseRatio = fit.Ratio,
            IdleKnown = idleKnown,
            WeekSd = fit.BlockSd,
            NightsInUse = use.Sum(p => p.Nights),
            NightsBroken = use.Where(p => p.State == RetrofitState.Broken).Sum(p => p.Nights),
            NightsIdle = idle.Sum(p => p.Nights),
            ByCold = ByCold(fit, part => Interval(fit.SavingOf(part), fit.RelativeVariance(part), unlike + rates)),
            PerKelvinColder = ColdSlope.Of(fit),
            ControlLine = Line(counted, p => p.ControlKwh, p => p.ControlDegreeHours),
            TreatedLine = Line(use, p => p.TreatedKwh, p => p.TreatedDegreeHours),
            Words = TrialWords.Of(house, fit, pairs, use, idle, idleKnown, rates > 0, modelled),
        };
    }

    private static List<SavingAtCold> ByCold(RatioFit fit, Func<IReadOnlyList<TrialPair>, Measured> of)
    {
        var ordered = fit.Use.Where(p => fit.Moved(p) > 0).OrderBy(p => p.OutsideC).ThenBy(p => p.From).ToList();
        var parts = Math.Clamp(ordered.Count / 14, 1, 4);
        return [.. Enumerable.Range(0, parts).Select(k => ordered.GetRange(k * ordered.Count / parts, (k + 1) * ordered.Count / parts - k * ordered.Count / parts))
            .Select(part => new SavingAtCold(part[0].OutsideC, part[^1].OutsideC, part.Sum(p => p.Nights), of(part)))];
    }

    /// <summary>Heat a day on lift by least squares.</summary>
    private static UseLine Line(IReadOnlyList<TrialPair> pairs, Func<TrialPair, double> kwh, Func<TrialPair, double> degreeHours)
    {
        var (x, y) = (pairs.Select(p => degreeHours(p) / p.Hours).ToArray(), pairs.Select(p => 24 * kwh(p) / p.Hours).ToArray());
        var (mx, my) = (x.Average(), y.Average());
        var sxx = x.Sum(v => (v - mx) * (v - mx));
        var slope = sxx > 1e-9 ? x.Zip(y, (a, b) => (a - mx) * (b - my)).Sum() / sxx : 0;
        return new(my - slope * mx, slope, x.Min(), x.Max());
    }
}
