using FarmPortfolio.Engine.Farms;
using FarmPortfolio.Engine.Units;
using FarmPortfolio.Engine.Weather;
using MathNet.Numerics.Distributions;
using static System.Math;

namespace FarmPortfolio.Engine.HeatDemand.Calibration;

/// <summary>
/// Ties the houses behind a tank or meter to its bills: use = multiplier x modelled fuel of the exact days + base x days. With 1 to 4 intervals the multiplier alone,
/// from 5 the base use too. Limits and spreads of the grades: common practice, no source, but Guideline 14's (see <see cref="Goodness"/>).
/// </summary>
public static class Calibrations
{
    /// <summary>Intervals from which a base use is fitted, and that grade A needs.</summary>
    public const int EnoughIntervals = 5;

    /// <summary>Least multiplier that is believed.</summary>
    public const double LeastBelieved = 0.6;

    /// <summary>Largest multiplier that is believed.</summary>
    public const double MostBelieved = 1.6;

    /// <summary>Least spread of grade A.</summary>
    public const double LeastSd = 0.05;

    /// <summary>Spread of a house's share where several hang on one tank or meter.</summary>
    public const double SharedHouseSd = 0.10;

    /// <summary>Share of a season's reckoned fuel that makes it a full one.</summary>
    public const double FullSeason = 0.95;

    /// <summary>Share of a season's degree days that its tickets must cover to count as its total.</summary>
    public const double LeastOfSeason = 0.80;

    private const double DegreeDayBaseC = 15;

    /// <summary>Fits a tank or meter.</summary>
    /// <param name="group">Tank or meter.</param>
    /// <param name="record">Its record; null = none.</param>
    /// <param name="houses">Houses behind it, as described.</param>
    /// <param name="winters">Weather of their station by season year.</param>
    /// <param name="spreads">What is held before the bills; null = the defaults.</param>
    /// <param name="values">Heating values that tickets and bills are turned into kWh by; null = those in use where nothing is chosen.</param>
    /// <param name="normalsOnly">Whether their station is known by monthly normals only, so that no exact day of it is known.</param>
    /// <returns>The fit.</returns>
    public static GroupFit Of(
        SupplyGroupFacts group, FuelRecordFacts? record, IReadOnlyList<BehindTank> houses, IReadOnlyDictionary<int, WeatherYear> winters, FitSpreads? spreads = null, HeatingValueSet? values = null,
        bool normalsOnly = false)
    {
        var held = spreads ?? new();
        var (gradeBSd, gradeCSd) = (held.GradeB, held.GradeC);
        var lines = new EntryLines(group, record ?? new() { SupplyGroupId = string.Empty }, values);
        var use = FuelUses.Of(lines);
        var fuel = new ModelledFuel(houses, winters);
        var intervals = use.Intervals.ToList();
        if (!intervals.Any(i => i.Metered))
        {
            intervals = [.. intervals.Concat(SeasonTotals(lines, winters)).OrderBy(i => i.FromOn)];
            use = use with { Intervals = intervals, Entries = lines.States };
        }

        var met = intervals.Select(i => (Use: i, Modelled: fuel.Of(i.FromOn, i.ToOn))).Where(i => i.Modelled is not null).Select(i => (i.Use, Modelled: i.Modelled!.Value)).ToList();
        var told = GivenBase(group, met);
        var words = new CalibrationWords(group, record, use, houses.Count, intervals.Count - met.Count, normalsOnly);
        if (met.Count == 0 || houses.Count == 0 || met.Sum(i => i.Modelled) <= 0)
        {
            return words.Nothing(met.Count == 0 ? [] : [.. met.Select(i => new IntervalFit(i.Use, told * i.Use.Days, told * i.Use.Days, i.Use.Days, false))], intervals.Count > 0 ? gradeBSd : gradeCSd);
        }

        var (y, x, d, sd) = (met.Select(i => i.Use.KwhFuel).ToArray(), met.Select(i => i.Modelled).ToArray(), met.Select(i => i.Use.Days).ToArray(), met.Select(i => i.Use.SdKwh).ToArray());

        // a total is met whole by what the houses need on its days, and scatters only on those on which they are heated
        var scatter = met.Select(i => i.Use.Metered ? i.Use.Days : fuel.HeatedDays(i.Use.FromOn, i.Use.ToOn)).ToArray();
        var fit = met.Count >= EnoughIntervals ? WeightedFit.Of(y, x, d, sd, null, scatter) : null;
        var baseFitted = fit is { Base: >= 0 };
        fit = baseFitted ? fit : WeightedFit.Of(y, x, d, sd, met.Count >= EnoughIntervals ? 0 : told, scatter);
        var (slope, own) = (fit!.Slope, fit.Base);
        var parameters = baseFitted ? 2 : 1;
        var fitted = x.Select((m, i) => slope * m + own * d[i]).ToArray();
        var goodness = Goodness.Of(y, fitted, d, parameters);
        var believed = slope is >= LeastBelieved and <= MostBelieved;
        var seasons = Seasons(fuel, met);
        var best = seasons.Count > 0 ? seasons.Max(s => s.Share) : 0;
        var metered = met.Where(i => i.Use.Metered).ToList();
        var gradeA = believed && goodness is { Met: true } && metered.Count >= EnoughIntervals && metered.Count == met.Count && best >= FullSeason;
        var relative = fit.SlopeSe is { } se && slope > 0 ? se / slope : double.PositiveInfinity;
        return words.Of(new()
        {
            Use = use,
            Intervals = [.. met.Select((m, i) => new IntervalFit(m.Use, m.Modelled + told * d[i], fitted[i], scatter[i], y.Length > parameters + 2 && Abs(y[i] - fitted[i]) > 2 * Sqrt(fit.Variances[i])))],
            WithoutWeather = intervals.Count - met.Count,
            Multiplier = Range(slope, fit.SlopeSe, fit.Freedom),
            BaseKwhPerDay = Range(own, fit.BaseSe, fit.Freedom),
            BaseIsFitted = baseFitted,
            Apart = believed ? Apart(houses, winters, met, fit, baseFitted, held) : null,
            Fit = goodness,
            AsDescribed = Goodness.Of(y, [.. x.Select((m, i) => m + told * d[i])], d),
            Check = CheckOf(seasons, baseFitted && group.BaseUseKwhPerDay is null ? own : told),
            Believed = believed,
            BestSeasonShare = best,
            Grade = gradeA ? DataGrade.A : DataGrade.B,
            Sd = gradeA ? Max(LeastSd, relative) : Max(gradeBSd, believed && double.IsFinite(relative) ? Min(relative, gradeCSd) : 0),
            Verdict = string.Empty,
            Checks = [],
            Raise = [],
        });
    }

    /// <summary>What a group's fit says of each house behind it: its multiplier for all alike (so that its use is shared by modelled fuel), the spread of a house's share on top where there are several.</summary>
    /// <param name="fit">The fit.</param>
    /// <param name="groupId">Tank or meter.</param>
    /// <param name="houses">Houses behind it.</param>
    /// <param name="spreads">What is held before the bills; null = the defaults.</param>
    /// <returns>The fit of a house.</returns>
    public static LossFit House(GroupFit fit, string groupId, int houses, FitSpreads? spreads = null)
    {
        var prior = (spreads ?? new()).AirLn;
        var mean = fit is { Believed: true, Multiplier: { } m } ? m.Value : 1;
        var loss = fit.Grade == DataGrade.C ? new LossFit(1, 0, fit.Sd, DataGrade.C) : new(mean, fit.Sd, houses > 1 ? SharedHouseSd : 0, fit.Grade, groupId);

        // bills of several houses tell of their mean; each is as far from it as before
        return fit.Apart is { } apart
            ? loss with { AirFactor = apart.AirFactor, AirSdLn = Sqrt(apart.AirSdLn * apart.AirSdLn + prior * prior * (1 - 1.0 / houses)) }
            : loss with { AirSdLn = prior };
    }

    /// <summary>Films and leaks as the bills leave them; of several houses the mean leaks vary less than one's.</summary>
    private static FilmsAndAir Apart(IReadOnlyList<BehindTank> houses, IReadOnlyDictionary<int, WeatherYear> winters, List<(UseInterval Use, double Modelled)> met, WeightedFit fit, bool baseFitted, FitSpreads held)
    {
        var losses = new LossFuel(houses, winters);
        var parts = met.Select(i => losses.Of(i.Use.FromOn, i.Use.ToOn)).ToList();
        var variances = fit.Freedom > 0 ? fit.Variances : [.. met.Select(i => Pow(held.GradeB * i.Use.KwhFuel, 2) + 1)];
        return FilmsAndAir.Of(
            [.. met.Select(i => i.Use.KwhFuel)], [.. met.Select(i => i.Modelled)], [.. parts.Select(p => p.Film)], [.. parts.Select(p => p.Air)], [.. met.Select(i => i.Use.Days)],
            variances, fit.Base, baseFitted, held with { AirLn = held.AirLn / Sqrt(houses.Count) });
    }

    private static Fitted Range(double value, double? se, int freedom)
    {
        if (se is not { } s || freedom < 1)
        {
            return new(value, null, null, null);
        }

        var half = StudentT.InvCDF(0, 1, freedom, 0.95) * s;
        return new(value, s, value - half, value + half);
    }

    /// <summary>Use that does not follow the weather as told, or read from bills wholly inside unheated months, kWh a day.</summary>
    private static double GivenBase(SupplyGroupFacts group, List<(UseInterval Use, double Modelled)> met)
    {
        var unheated = group.BaseUseKwhPerDay is null ? met.Where(i => i.Modelled == 0).Select(i => i.Use).ToList() : [];
        return unheated.Count > 0 ? unheated.Sum(u => u.KwhFuel) / unheated.Sum(u => u.Days) : ToldBase(group);
    }

    /// <summary>Use that does not follow the weather, as told of the tank or meter, kWh a day.</summary>
    internal static double ToldBase(SupplyGroupFacts group) => group.BaseUseKwhPerDay ?? group.OtherUses.Sum(o => o.KwhFuelPerYear ?? 0) / 365;

    private static IEnumerable<UseInterval> SeasonTotals(EntryLines lines, IReadOnlyDictionary<int, WeatherYear> winters)
    {
        foreach (var season in lines.Sound.Where(l => l.Entry.Kind == FuelEntryKind.Delivery && lines.States[l.No].Use == EntryUse.Waiting).GroupBy(l => SeasonCalendar.SeasonOf(l.Entry.ToOn)).ToList())
        {
            if (!winters.TryGetValue(season.Key, out var year) || TankUse.Total(lines, [.. season]) is not { } total || lines.Holes.Any(h => h.On >= total.FromOn && h.On <= total.ToOn))
            {
                continue;
            }

            var covered = 0.0;
            for (var day = total.FromOn; day <= total.ToOn; day = day.AddDays(1))
            {
                covered += Max(0, DegreeDayBaseC - year.DayMeanC(SeasonCalendar.DayIndex(day)));
            }

            if (covered >= LeastOfSeason * year.DegreeDaysK(DegreeDayBaseC))
            {
                foreach (var no in total.EntryNos)
                {
                    lines.Set(no, EntryUse.Used, null);
                }

                yield return total;
            }
        }
    }

    private static List<(int Season, double Share, List<(UseInterval Use, double Modelled)> In)> Seasons(ModelledFuel fuel, List<(UseInterval Use, double Modelled)> met) =>
        [.. met.GroupBy(i => SeasonCalendar.SeasonOf(i.Use.FromOn.AddDays(i.Use.Days / 2))).Where(g => fuel.Season(g.Key)?.Sum() > 0)
            .Select(g => (g.Key, g.Sum(i => i.Modelled) / fuel.Season(g.Key)!.Sum(), g.ToList())).OrderBy(s => s.Key)];

    /// <summary>The newest season told in full, else the newest told at all.</summary>
    private static BackCheck? CheckOf(List<(int Season, double Share, List<(UseInterval Use, double Modelled)> In)> seasons, double baseKwhPerDay)
    {
        if (seasons.Count == 0)
        {
            return null;
        }

        var full = seasons.Where(s => s.Share >= LeastOfSeason).ToList();
        var one = full.Count > 0 ? full[^1] : seasons.MaxBy(s => s.Share);
        return new(one.Season, one.In.Min(i => i.Use.FromOn), one.In.Max(i => i.Use.ToOn), one.Share, one.In.Sum(i => i.Modelled + baseKwhPerDay * i.Use.Days), one.In.Sum(i => i.Use.KwhFuel));
    }
}
