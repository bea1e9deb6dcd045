using FarmPortfolio.Engine.Farms;
using FarmPortfolio.Engine.Units;

namespace FarmPortfolio.Engine.HeatDemand;

/// <summary>
/// Outline of a house with the heights that nobody told. Common practice, no source: a hoop that stands on the ground is half a circle; one on walls is flatter, its bow rising 0.30 of the width from walls of 4 ft up
/// (between, in line with the wall). A builder's worked example of a heater's size agrees: 36 ft of film over the bow of a 22 ft house. A Gothic arch rises 0.40, a gable 0.25 of the width.
/// </summary>
public static class HouseOutline
{
    /// <summary>Wall from which a hoop has its flattest usual bow, metres.</summary>
    public const double FullWallM = 4 * Us.FootM;

    private const double HalfCircle = 0.5;
    private const double FlatBow = 0.30;
    private const double Arch = 0.40;
    private const double Pitch = 0.25;

    /// <summary>Roof of a bay, side wall and ridge; what was told stands, the rest is usual for the shape.</summary>
    /// <param name="house">The house.</param>
    /// <returns>Roof shape, side wall and ridge in metres.</returns>
    public static (HouseShape Roof, double SideWallM, double RidgeM) Of(HouseFacts house)
    {
        var roof = house.Shape == HouseShape.GutterConnected ? house.BayRoof ?? HouseShape.Gable : house.Shape;
        var side = house.SideWallM ?? (house.Shape switch
        {
            HouseShape.Hoop => 0,
            HouseShape.GothicArch => 1.2,
            HouseShape.Gable => 2.1,
            _ => 3.0,
        });
        return (roof, side, house.RidgeM ?? side + RiseShare(roof, side) * house.WidthM);
    }

    /// <summary>Usual rise of a roof over its walls, share of the bay's width.</summary>
    private static double RiseShare(HouseShape roof, double sideWallM) => roof switch
    {
        HouseShape.Hoop => HalfCircle - (HalfCircle - FlatBow) * Math.Clamp(sideWallM / FullWallM, 0, 1),
        HouseShape.GothicArch => Arch,
        _ => Pitch,
    };
}
