using FarmPortfolio.Engine.Retrofits;

namespace FarmPortfolio.Engine.HeatDemand;

/// <summary>The usual options of a house: single retrofits, combinations, changes of running; only those that fit it.</summary>
public static class UsualOptions
{
    private static readonly (string[] Parts, OptionTiming Timing)[] Usual =
    [
        (["foam"], OptionTiming.Now), (["curtain"], OptionTiming.Now), (["irfilm"], OptionTiming.AtFilmChange), (["seal"], OptionTiming.Now), (["foam", "seal"], OptionTiming.Now),
        (["curtain", "seal"], OptionTiming.Now), (["endwalls", "kneewall"], OptionTiming.Now), (["condensing"], OptionTiming.Now), (["secondfilm"], OptionTiming.Now), (["openlater"], OptionTiming.Now),
    ];

    /// <summary>Options that fit a house.</summary>
    /// <param name="house">House.</param>
    /// <returns>Options.</returns>
    public static IReadOnlyList<OptionFacts> For(HouseModel house) =>
        [.. Usual.Select(u => Option(u.Parts, u.Timing)).Where(o => OptionChecks.Of(house, o).Count == 0 && !(o.Key.StartsWith("openlater", StringComparison.Ordinal) && house.Facts.HeatingPlanCode == "lettuce"))];

    /// <summary>An option with its key.</summary>
    /// <param name="parts">Codes.</param>
    /// <param name="timing">When.</param>
    /// <param name="overrides">Own figures.</param>
    /// <returns>The option.</returns>
    public static OptionFacts Option(IEnumerable<string> parts, OptionTiming timing, OptionOverrides? overrides = null)
    {
        var sorted = parts.Order(StringComparer.Ordinal).ToArray();
        var when = timing switch { OptionTiming.AtFilmChange => "film", OptionTiming.AtHeaterChange => "heater", _ => "now" };
        return new($"{string.Join('-', sorted)}-{when}", sorted, timing, overrides);
    }
}
