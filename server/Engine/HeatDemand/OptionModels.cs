using FarmPortfolio.Engine.Retrofits;

namespace FarmPortfolio.Engine.HeatDemand;

/// <summary>Lays an option on a house: one balance of the whole combination, never a sum of parts.</summary>
public static class OptionModels
{
    /// <summary>Codes of what moves, the layer of the roof before the curtain below it.</summary>
    internal static readonly string[] Moving = ["foam", "blanket", "curtain"];

    /// <summary>The house as it stands, with what is already installed.</summary>
    /// <param name="house">The house.</param>
    /// <returns>The option "none".</returns>
    public static OptionModel AsItStands(HouseModel house) => Build(house, new("none", []));

    /// <summary>An option on a house.</summary>
    /// <param name="house">The house.</param>
    /// <param name="option">The option.</param>
    /// <returns>The model, null when a fault stops it, and the faults.</returns>
    public static (OptionModel? Model, IReadOnlyList<Fault> Faults) Of(HouseModel house, OptionFacts option)
    {
        var faults = OptionChecks.Of(house, option);
        return faults.Count > 0 ? (null, faults) : (Build(house, option), []);
    }

    private static OptionModel Build(HouseModel house, OptionFacts option)
    {
        var codes = new HashSet<string>(house.Facts.RetrofitsInstalled, StringComparer.Ordinal);
        codes.UnionWith(option.Parts);
        var numbers = new OptionNumbers(house.Catalogue, option.Overrides);
        var envelope = new Envelope(house, codes, numbers);
        var movables = Moving.Where(codes.Contains).Take(2).ToArray();
        var rows = new double[4][];
        for (var state = 0; state < 4; state++)
        {
            rows[state] = envelope.Conductance([.. movables.Where((_, i) => (state >> i & 1) == 1)]);
        }

        var standing = house.Facts.RetrofitsInstalled.Aggregate(1.0, (light, code) => light * (1 - numbers.Of(code, "lightLost")));
        var added = option.Overrides?.LightLostShare is { } own
            ? 1 - own
            : option.Parts.Aggregate(1.0, (light, code) => light * (1 - numbers.Of(code, "lightLost")));
        var heater = house.Heaters[0];
        var efficiency = codes.Contains("condensing") ? Math.Max(numbers.Of("condensing", "efficiency"), heater.Efficiency) : heater.Efficiency;
        efficiency = codes.Contains("service") ? Math.Max(efficiency, Math.Min(efficiency + numbers.Of("service", "efficiencyAdded"), 0.97)) : efficiency;
        var fuelSwitch = FuelSwitch.Of(option.Parts);
        if (fuelSwitch is not null)
        {
            // a heat pump's electricity comes from its own table, as if at an efficiency of one
            efficiency = fuelSwitch == FuelSwitch.HeatPump ? 1 : numbers.Of(fuelSwitch, "efficiency");
        }

        return new()
        {
            Key = option.Key,
            Parts = option.Parts,
            ConductanceWPerK = rows,
            Movables = [.. movables.Select(c => new Movable(c, numbers.Rule(c)))],
            PurgeWhPerK = envelope.PurgeWhPerK(),
            SunM2 = house.Geometry.FloorM2 * house.SunShare * standing * added,
            LightLostShare = 1 - added,
            CarryOver = house.CarryOver,
            Periods = RunningChanges.Of(house.Periods, codes, (code, name) => numbers.Of(code, name)),
            Efficiency = efficiency,
            Switch = fuelSwitch,
            OutputW = house.Heaters.Count == 1 && fuelSwitch is null ? heater.OutputKw / heater.Efficiency * efficiency * 1000 : house.OutputKw * 1000,
        };
    }
}
