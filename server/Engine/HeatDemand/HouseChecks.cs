using FarmPortfolio.Engine.Farms;
using FarmPortfolio.Engine.Retrofits;
using FarmPortfolio.Engine.Units;

namespace FarmPortfolio.Engine.HeatDemand;

/// <summary>What of a house cannot be, said field by field.</summary>
public static class HouseChecks
{
    private const double LeastWidthM = 6 * Us.FootM;
    private const double LeastRidgeM = 1.2;
    private const double MostWidthM = 200 * Us.FootM;

    /// <summary>Least rated input of a heater, kW; no burner of a house is under it (common practice, no source).</summary>
    private const double LeastInputKw = 1;

    /// <summary>How far a day's set point may lie under the night's, K: more is an exchange of the two (common practice, no source).</summary>
    private const double DayUnderNightK = 6;

    /// <summary>Room that a curtain leaves under the ridge, metres (a foot).</summary>
    internal const double UnderRidgeM = Us.FootM;

    /// <summary>All that is wrong with a house.</summary>
    /// <param name="house">The house.</param>
    /// <param name="catalogue">Coverings, heaters, plans it may name.</param>
    /// <param name="firstSeason">Year of the July of the study's first season, which bounds the years of coverings and heaters.</param>
    /// <returns>Faults; empty = it can be reckoned.</returns>
    public static IReadOnlyList<Fault> Of(HouseFacts house, Catalogue catalogue, int firstSeason)
    {
        var faults = new List<Fault>();
        Range("widthM", house.WidthM, LeastWidthM, MostWidthM, "width", Us.FootM, "m", "ft", "; if you typed feet, choose feet");
        Range("lengthM", house.LengthM, 2, 400, "length", Us.FootM, "m", "ft");
        if (house.SideWallM is { } wall)
        {
            Range("sideWallM", wall, 0, 12, "side wall", Us.FootM, "m", "ft");
        }

        Range("bays", house.Bays, 1, 60, "number of bays");
        if (house.Shape != HouseShape.GutterConnected && house.Bays > 1)
        {
            faults.Add(new("OUT_OF_RANGE", "bays", "Only a gutter-connected house has several bays.", "Choose the gutter-connected shape, or one bay."));
        }

        if (house.BayRoof == HouseShape.GutterConnected)
        {
            faults.Add(new("OUT_OF_RANGE", "bayRoof", "A bay's roof cannot itself be gutter-connected.", "Choose hoop, Gothic arch or gable."));
        }

        if (faults.Count == 0)
        {
            var (_, sideWall, ridge) = HouseOutline.Of(house);
            if (!(ridge > sideWall + 0.2) || ridge < LeastRidgeM || ridge > sideWall + 2 * house.WidthM)
            {
                faults.Add(new("OUT_OF_RANGE", "ridgeM", $"A ridge at {BothUnits.Length(ridge)} over a side wall of {BothUnits.Length(sideWall)} cannot be.", $"Give a ridge of {BothUnits.Lengths(Math.Max(LeastRidgeM, sideWall + 0.3), sideWall + house.WidthM)}."));
            }
            else
            {
                Curtain(house, ridge, faults);
            }
        }

        Optional("filmGapM", house.FilmGapM, 0.01, 1.0, "gap between the films", Us.FootM, "m", "ft");
        Optional("airChangesPerHour", house.AirChangesPerHour, 0.05, 20, "air changes an hour");
        Optional("purgeVolumesPerDay", house.PurgeVolumesPerDay, 0, 48, "volumes vented a day");
        Optional("perimeterWPerMK", house.PerimeterWPerMK, 0, 5, "edge loss", Us.EdgeValue, "W/mK", "Btu/h ft F");
        Optional("cropUsdPerM2", house.CropUsdPerM2, 0, 5000, "crop sales", 1 / Us.SquareFootM2, "$/m2", "$/ft2");
        Optional("yieldPerLight", house.YieldPerLight, 0, 3, "yield lost per light lost", null, "%/%");
        Optional("spaceWorth", house.SpaceWorth, 0, 1, "worth of lost space", null, "(a share)");
        foreach (var surface in house.Surfaces.Where(s => catalogue.Find(CatalogueKind.Covering, s.CoveringCode) is null))
        {
            faults.Add(new("UNKNOWN_CODE", "surfaces", $"There is no covering \"{surface.CoveringCode}\" in the catalogue.", "Choose one of the catalogue's coverings."));
        }

        foreach (var surface in house.Surfaces.Where(s => !FilmCondition.Known(s.Condition)))
        {
            faults.Add(new("UNKNOWN_CODE", "surfaces", $"\"{surface.Condition}\" is no state of a covering.", "Choose sound, worn or torn, or leave it open."));
        }

        if (house.HeatingPlanCode is { } plan && house.HeatingPeriods.Count == 0 && catalogue.Find(CatalogueKind.HeatingPlan, plan) is null)
        {
            faults.Add(new("UNKNOWN_CODE", "heatingPlanCode", $"There is no heating plan \"{plan}\" in the catalogue.", "Choose one of the catalogue's plans, or enter periods."));
        }

        foreach (var code in house.RetrofitsInstalled.Where(c => catalogue.Find(CatalogueKind.Retrofit, c) is null))
        {
            faults.Add(new("UNKNOWN_CODE", "retrofitsInstalled", $"There is no retrofit \"{code}\" in the catalogue.", "Choose one of the catalogue's retrofits."));
        }

        Heaters(house, catalogue, faults);
        faults.AddRange(HouseYears.Of(house, firstSeason));
        Periods(house, faults);
        return faults;

        void Optional(string field, double? value, double low, double high, string what, double? siPerUs = null, string si = "", string us = "")
        {
            if (value is { } v)
            {
                Range(field, v, low, high, what, siPerUs, si, us);
            }
        }

        void Range(string field, double value, double low, double high, string what, double? siPerUs = null, string si = "", string us = "", string hint = "")
        {
            if (!double.IsFinite(value) || value < low || value > high)
            {
                faults.Add(new("OUT_OF_RANGE", field, $"The {what} of {BothUnits.Figure(value, siPerUs, si, us)} is outside {BothUnits.Span(low, high, siPerUs, si, us)}.", $"Give {BothUnits.Span(low, high, siPerUs, si, us)}{hint}."));
            }
        }
    }

    private static void Curtain(HouseFacts house, double ridge, List<Fault> faults)
    {
        var below = ridge - UnderRidgeM;
        if (house.CurtainHeightM is { } h && !(h >= 1 && h <= below))
        {
            faults.Add(new("OUT_OF_RANGE", "curtainHeightM", $"A curtain at {BothUnits.Length(h)} does not fit under a ridge at {BothUnits.Length(ridge)}.", $"Give a height of {BothUnits.Lengths(1, below)}."));
        }
        else if (house.CurtainTopM is { } top && !(top >= (house.CurtainHeightM ?? 1) && top <= below))
        {
            faults.Add(new("OUT_OF_RANGE", "curtainTopM", $"A curtain cannot rise from {BothUnits.Length(house.CurtainHeightM ?? 1)} to {BothUnits.Length(top)} under a ridge at {BothUnits.Length(ridge)}.", $"Give a top between the edge's height and {BothUnits.Length(below)}."));
        }
    }

    private static void Heaters(HouseFacts house, Catalogue catalogue, List<Fault> faults)
    {
        foreach (var heater in house.Heaters)
        {
            if (catalogue.Find(CatalogueKind.Heater, heater.HeaterCode) is null)
            {
                faults.Add(new("UNKNOWN_CODE", "heaters", $"There is no heater \"{heater.HeaterCode}\" in the catalogue.", "Choose one of the catalogue's heaters."));
            }

            if (!HeaterModels.Takes(heater.HeaterCode, heater.Fuel))
            {
                faults.Add(new("WRONG_FUEL", "heaters", $"A heater of the kind \"{heater.HeaterCode}\" does not take {heater.Fuel}.", $"Choose another fuel, or the kind \"{HeaterModels.UsualCode(heater.Fuel)}\"{(heater.Fuel == FuelKind.Electricity ? " or \"heatpump\"" : string.Empty)}."));
            }

            var most = heater.Fuel == FuelKind.Electricity ? 6.0 : 1.0;
            if (heater.SeasonalEfficiency is { } e && !(e > 0.2 && e <= most))
            {
                faults.Add(new("OUT_OF_RANGE", "heaters", $"A seasonal efficiency of {e:0.###} cannot be: a burner delivers less heat than it burns.", "Give a share between 0.2 and 1, on the higher heating value; 80 % is 0.8."));
            }

            if (heater.InputKw is { } input && !(input >= LeastInputKw && input < 20000))
            {
                var thousands = input is > 0 and < LeastInputKw && 1000 * input is >= LeastInputKw and < 20000;
                faults.Add(new("OUT_OF_RANGE", "heaters", $"A rated input of {BothUnits.Power(input)} cannot be{(thousands ? FormattableString.Invariant($": did you mean {1000 * input / Us.BtuKwh:#,0} Btu/h?") : ".")}", $"Give the plate's input, {BothUnits.Span(LeastInputKw, 20000, Us.BtuKwh, "kW", "Btu/h")}."));
            }
        }

        var share = house.Supplies.Sum(s => s.Share);
        if (house.Supplies.Count > 0 && Math.Abs(share - 1) > 1e-6)
        {
            faults.Add(new("SHARES", "supplies", $"The shares of the supply groups add up to {share:0.###}.", "Let them add up to 1."));
        }

        if (house.Supplies.Any(s => s.HeaterNo < 0 || s.HeaterNo >= Math.Max(1, house.Heaters.Count)))
        {
            faults.Add(new("OUT_OF_RANGE", "supplies", "A supply feeds a heater that the house does not have.", "Number the heaters from 0."));
        }
    }

    private static int LastDay(int month) => DateTime.DaysInMonth(2000, month);

    private static bool InCalendar(MonthDay day) => day.Month is >= 1 and <= 12 && day.Day >= 1 && day.Day <= LastDay(day.Month);

    /// <summary>Two periods that share a day of the year, first of the year first; null = none do.</summary>
    private static (int First, int Second, DateOnly Day)? Overlap(IReadOnlyList<HeatingPeriod> periods)
    {
        for (var day = new DateOnly(2000, 1, 1); day.Year == 2000; day = day.AddDays(1))
        {
            var key = 100 * day.Month + day.Day;
            var here = Enumerable.Range(0, periods.Count).Where(i =>
            {
                var (from, to) = (100 * periods[i].From.Month + periods[i].From.Day, 100 * periods[i].To.Month + periods[i].To.Day);
                return from <= to ? key >= from && key <= to : key >= from || key <= to;
            }).Take(2).ToArray();
            if (here.Length == 2)
            {
                return (here[0], here[1], day);
            }
        }

        return null;
    }

    private static void Periods(HouseFacts house, List<Fault> faults)
    {
        if (house.HeatingPeriods.All(p => InCalendar(p.From) && InCalendar(p.To)) && Overlap(house.HeatingPeriods) is var (first, second, shared))
        {
            var on = shared.ToString("d MMM", System.Globalization.CultureInfo.InvariantCulture);
            faults.Add(new("OVERLAP", "heatingPeriods", $"Heating periods {first + 1} and {second + 1} both hold {on}: which set points count then is not told.", "Let one end on the day before the other begins."));
        }

        foreach (var p in house.HeatingPeriods)
        {
            foreach (var day in new[] { p.From, p.To }.Where(d => !InCalendar(d)))
            {
                faults.Add(new("OUT_OF_RANGE", "heatingPeriods", $"A heating period begins or ends on day {day.Day} of month {day.Month}, which no calendar has.",
                    day.Month is >= 1 and <= 12 ? $"Give a day from 1 to {LastDay(day.Month)} in that month." : "Give a month from 1 to 12."));
            }

            if (!(p.NightC is > -5 and < 40) || !(p.DayC is > -5 and < 45))
            {
                faults.Add(new("OUT_OF_RANGE", "heatingPeriods", $"Set points of {p.NightC:0.#} C ({Us.F(p.NightC):0} F) by night and {p.DayC:0.#} C ({Us.F(p.DayC):0} F) by day are no crop's.", "Give 0 to 35 C (32 to 95 F); if you typed Fahrenheit, choose Fahrenheit."));
            }
            else if (p.DayC < p.NightC - DayUnderNightK)
            {
                faults.Add(new("OUT_OF_RANGE", "heatingPeriods", $"The day set point, {p.DayC:0.#} C ({Us.F(p.DayC):0} F), lies under the night's, {p.NightC:0.#} C ({Us.F(p.NightC):0} F).", "Are night and day exchanged? Days kept cooler to hold plants short may lie up to 6 K (11 F) under the night."));
            }
        }
    }
}
