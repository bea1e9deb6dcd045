using FarmPortfolio.Engine.Retrofits;

namespace FarmPortfolio.Engine.HeatDemand;

/// <summary>Lays an option on a house: one balance of the whole combination, never a sum of parts.</summary>
public static class OptionModels
{
    private static readonly string[] Moving = ["foam", "blanket", "curtain"];

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
        var physics = option.Overrides?.Physics;
        double Number(string code, string name) =>
            physics is not null && physics.TryGetValue(code + "." + name, out var own) ? own : house.Catalogue.Value(CatalogueKind.Retrofit, code, name);
        var envelope = new Envelope(house, codes, Number);
        var movables = Moving.Where(codes.Contains).ToArray();
        var roofLayer = movables.FirstOrDefault(c => c is "foam" or "blanket");
        var rows = new double[4][];
        for (var state = 0; state < 4; state++)
        {
            var inPlace = movables.Where((_, i) => i < 2 && (state >> i & 1) == 1).ToArray();
            rows[state] = envelope.Conductance(inPlace.Contains(roofLayer) ? roofLayer : null, inPlace.Contains("curtain"));
        }

        var light = 1.0;
        foreach (var code in codes)
        {
            light *= 1 - (option.Parts.Contains(code) ? option.Overrides?.LightLostShare is { } own && option.Parts[0] == code ? own : Number(code, "lightLost") : Number(code, "lightLost"));
        }

        var standing = 1.0;
        foreach (var code in house.Facts.RetrofitsInstalled)
        {
            standing *= 1 - Number(code, "lightLost");
        }

        var heater = house.Heaters[0];
        var efficiency = codes.Contains("condensing") ? Math.Max(Number("condensing", "efficiency"), heater.Efficiency) : heater.Efficiency;
        efficiency = codes.Contains("service") ? Math.Min(efficiency + Number("service", "efficiencyAdded"), 0.97) : efficiency;
        return new()
        {
            Key = option.Key,
            Parts = option.Parts,
            ConductanceWPerK = rows,
            Movables = [.. movables.Take(2).Select(c => new OperationRule(
                Number(c, "onBelowC"), physics is not null && physics.TryGetValue(c + ".keepBelowC", out var keep) ? keep : double.NegativeInfinity,
                physics is not null && physics.TryGetValue(c + ".closeBelowWPerM2", out var close) ? close : house.Catalogue.Default("closeBelowWPerM2"), Number(c, "delayHours")))],
            PurgeWhPerK = envelope.PurgeWhPerK(),
            SunM2 = house.Geometry.FloorM2 * house.SunShare * light,
            LightLostShare = Math.Max(0, 1 - light / standing),
            CarryOver = house.CarryOver,
            Periods = RunningChanges.Of(house.Periods, codes, Number),
            Efficiency = efficiency,
            OutputW = house.Heaters.Count == 1 ? heater.OutputKw / heater.Efficiency * efficiency * 1000 : house.OutputKw * 1000,
        };
    }
}
