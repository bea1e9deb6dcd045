using FarmPortfolio.Engine.Retrofits;
using FarmPortfolio.Engine.Weather;

namespace FarmPortfolio.Engine.HeatDemand;

/// <summary>What an option saves where the air changes are not known: a bill fixes the house's heat as a whole, not how it is shared between films and leaks.</summary>
/// <param name="Tight">Saving of heat, share, where one house in ten is tighter.</param>
/// <param name="Central">Saving of heat, share, as described.</param>
/// <param name="Leaky">Saving of heat, share, where one house in ten is leakier.</param>
public sealed record SavingByLeaks(double Tight, double Central, double Leaky)
{
    /// <summary>Standard deviation of the saving over the saving.</summary>
    public double RelativeSd => Central == 0 ? 0 : Math.Abs(Tight - Leaky) / (2 * AirLeaks.OneInTen) / Math.Abs(Central);
}

/// <summary>Air changes as an uncertain input of their own.</summary>
public static class AirLeaks
{
    /// <summary>Spread of ln N where the air changes are not measured; common practice, no source.</summary>
    public const double SdOfLog = HeatDefaults.AirChangesSdLn;

    /// <summary>Standard deviations to one in ten on one side.</summary>
    internal const double OneInTen = 1.2815515655446004;

    /// <summary>The saving of an option at tight, described and leaky air changes, the films' U moved so that the house as it stands burns the same.</summary>
    /// <param name="house">The house.</param>
    /// <param name="option">The option.</param>
    /// <param name="year">The season.</param>
    /// <returns>The savings; null where the option does not fit the house or the house needs no heat.</returns>
    public static SavingByLeaks? Of(HouseModel house, OptionFacts option, WeatherYear year)
    {
        var standing = Heat(OptionModels.AsItStands(house), year);
        if (OptionModels.Of(house, option).Model is not { } central || standing <= 0)
        {
            return null;
        }

        double At(double factor)
        {
            var same = SameHeat(house with { AirChangesPerHour = house.AirChangesPerHour * factor }, standing, year);
            return 1 - Heat(OptionModels.Of(same, option).Model!, year) / Heat(OptionModels.AsItStands(same), year);
        }

        var spread = Math.Exp(OneInTen * SdOfLog);
        return new(At(1 / spread), 1 - Heat(central, year) / standing, At(spread));
    }

    /// <summary>The house with all its U-values multiplied so that it burns as much as before.</summary>
    internal static HouseModel SameHeat(HouseModel house, double heatKwh, WeatherYear year)
    {
        HouseModel Scaled(double f) => house with { RoofU = house.RoofU * f, SideU = house.SideU * f, EndU = house.EndU * f };
        var (low, high) = (0.1, 4.0);
        for (var i = 0; i < 40; i++)
        {
            var mid = (low + high) / 2;
            (low, high) = Heat(OptionModels.AsItStands(Scaled(mid)), year) > heatKwh ? (low, mid) : (mid, high);
        }

        return Scaled((low + high) / 2);
    }

    private static double Heat(OptionModel option, WeatherYear year)
    {
        Span<double> months = stackalloc double[12];
        HeatBalance.PlainDemand(option, year, 0, months);
        var sum = 0.0;
        foreach (var month in months)
        {
            sum += month;
        }

        return sum;
    }
}
