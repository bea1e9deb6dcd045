using FarmPortfolio.Engine.Retrofits;
using FarmPortfolio.Engine.Units;

namespace FarmPortfolio.Engine.HeatDemand;

/// <summary>Whether an option can stand on a house: what its parts need and exclude.</summary>
public static class OptionChecks
{
    /// <summary>All that is wrong with an option on a house.</summary>
    /// <param name="house">The house.</param>
    /// <param name="option">The option.</param>
    /// <returns>Faults; empty = it fits.</returns>
    public static IReadOnlyList<Fault> Of(HouseModel house, OptionFacts option)
    {
        var faults = new List<Fault>();
        var all = new HashSet<string>(house.Facts.RetrofitsInstalled.Concat(option.Parts), StringComparer.Ordinal);
        foreach (var code in option.Parts)
        {
            if (house.Catalogue.Find(CatalogueKind.Retrofit, code) is not { } entry)
            {
                faults.Add(new("UNKNOWN_CODE", "parts", $"There is no retrofit \"{code}\" in the catalogue.", "Choose retrofits of the catalogue."));
                continue;
            }

            if (house.Facts.RetrofitsInstalled.Contains(code))
            {
                faults.Add(new("ALREADY_THERE", "parts", $"\"{entry.Title}\" is already on this house.", "Leave it out of the option, or out of what is installed."));
            }

            foreach (var other in entry.Excludes.Where(all.Contains))
            {
                faults.Add(new("EXCLUDED", "parts", $"\"{entry.Title}\" and \"{Title(house, other)}\" exclude each other.", "Keep one of the two."));
            }

            foreach (var need in entry.Needs)
            {
                Need(house, all, entry, need, faults);
            }
        }

        if (option.Parts.Distinct(StringComparer.Ordinal).Count() != option.Parts.Count)
        {
            faults.Add(new("DOUBLED", "parts", "A part stands twice in the option.", "Name each part once."));
        }

        if (option.Overrides is { } o)
        {
            Bound("outlayCents", o.OutlayCents / 100.0, 0, 1e10, "$");
            Bound("upkeepUsdPerYear", o.UpkeepUsdPerYear, 0, 1e7, "$");
            Bound("watchingHoursPerWeek", o.WatchingHoursPerWeek, 0, 168);
            Bound("consumablesUsdPerYear", o.ConsumablesUsdPerYear, 0, 1e7, "$");
            Bound("electricityKwhPerYear", o.ElectricityKwhPerYear, 0, 1e7);
            Bound("spaceLostShare", o.SpaceLostShare, 0, 1);
            Bound("lightLostShare", o.LightLostShare, 0, 1);
            Bound("lifeYears", o.LifeYears, 1, 60);
        }

        return faults;

        void Bound(string field, double? value, double low, double high, string before = "")
        {
            if (value is { } v && !(v >= low && v <= high))
            {
                faults.Add(new("OUT_OF_RANGE", field, $"{Say(v)} is outside {Say(low)} to {Say(high)}.", $"Give a figure between {Say(low)} and {Say(high)}."));
            }

            string Say(double figure) => FormattableString.Invariant($"{(figure < 0 ? "-" : string.Empty)}{before}{ShortFigure.Of(Math.Abs(figure), "#,0.###")}");
        }
    }

    private static string Title(HouseModel house, string code) => house.Catalogue.Find(CatalogueKind.Retrofit, code)?.Title ?? code;

    private static void Need(HouseModel house, HashSet<string> all, CatalogueFacts entry, string need, List<Fault> faults)
    {
        switch (need)
        {
            case "double-film" when house.RoofFilms != 2 && !all.Contains("secondfilm"):
                faults.Add(new("NEEDS", "parts", $"\"{entry.Title}\" needs two films with a gap; this roof has none.", "Add a second film first, or choose a curtain."));
                break;
            case "single-film" when house.RoofCovering != "singlefilm":
                faults.Add(new("NEEDS", "parts", $"\"{entry.Title}\" is for a roof of one film; this one is {house.RoofCovering}.", "Leave it out."));
                break;
            case "gas" when house.Heaters[0].Fuel is not (FuelKind.NaturalGas or FuelKind.Propane):
                faults.Add(new("NEEDS", "parts", $"\"{entry.Title}\" burns natural gas or propane.", "Leave it out, or change the heater's fuel."));
                break;
            case "other-fuel" when house.Heaters[0].Fuel == FuelSwitch.FuelOf(entry.Code):
                faults.Add(new("NEEDS", "parts", $"\"{entry.Title}\" is for a house on another fuel; this one burns {house.Heaters[0].Fuel} already.", "Leave it out."));
                break;
            default:
                break;
        }
    }
}
