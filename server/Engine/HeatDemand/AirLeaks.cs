namespace FarmPortfolio.Engine.HeatDemand;

/// <summary>Air changes as an uncertain input of their own: a bill fixes a house's heat as a whole, not how it is shared between films and leaks.</summary>
public static class AirLeaks
{
    /// <summary>Standard deviations to one in ten on one side.</summary>
    internal const double OneInTen = Units.NormalEnds.OneInTen;

    /// <summary>Share of the heat that falls in the hours a movable is in place, for a house that has one: 70 to 80 % by night (eXtension farm energy, thermal curtains).</summary>
    private const double InPlaceShare = 0.75;

    /// <summary>Least that the films are scaled to: where leaks would take all the heat and more, the house burns more.</summary>
    private const double LeastFilms = 0.05;

    private const int Steps = 24;
    private const double Enough = 1e-9;

    /// <summary>The house with other air changes, all its U-values moved so that it loses as much heat a degree as before.</summary>
    /// <param name="house">The house.</param>
    /// <param name="factor">On its air changes, above 0.</param>
    /// <returns>The house as leaky as that.</returns>
    public static HouseModel SameLoss(HouseModel house, double factor)
    {
        var wanted = LossWPerK(house);
        HouseModel At(double films) => house with { AirChangesPerHour = house.AirChangesPerHour * factor, RoofU = house.RoofU * films, SideU = house.SideU * films, EndU = house.EndU * films };

        // nearly a straight line in the films' factor: a secant meets it in a few steps
        var (f0, f1) = (1.0, 0.9);
        var (y0, y1) = (LossWPerK(At(f0)) - wanted, LossWPerK(At(f1)) - wanted);
        for (var i = 0; i < Steps && Math.Abs(y1) > Enough * wanted && y1 != y0; i++)
        {
            var next = Math.Clamp(f1 - y1 * (f1 - f0) / (y1 - y0), LeastFilms, 20);
            if (next == f1)
            {
                break;
            }

            (f0, y0, f1) = (f1, y1, next);
            y1 = LossWPerK(At(f1)) - wanted;
        }

        return At(f1);
    }

    /// <summary>Loss a degree as it stands; what is movable in it counts by the share of the heat it meets.</summary>
    private static double LossWPerK(HouseModel house)
    {
        var option = OptionModels.AsItStands(house);
        var open = option.TotalWPerK(0);
        return option.Movables.Count == 0 ? open : (1 - InPlaceShare) * open + InPlaceShare * option.TotalWPerK((1 << option.Movables.Count) - 1);
    }
}
