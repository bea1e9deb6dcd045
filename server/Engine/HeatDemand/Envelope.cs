using FarmPortfolio.Engine.Retrofits;

namespace FarmPortfolio.Engine.HeatDemand;

/// <summary>The surfaces of a house with a set of retrofits, and the conductance of every state of what moves. Steady resistances in series and side by side (ASABE EP406).</summary>
internal sealed class Envelope
{
    private const double KneeHeightM = 3 * Units.Us.FootM;

    private readonly HouseModel house;
    private readonly Func<string, string, double> number;
    private readonly double airHeat;
    private readonly HashSet<string> codes;
    private readonly double roofU;
    private readonly double sideU;
    private readonly double endU;
    private readonly double airChanges;
    private readonly double edge;

    /// <summary>Lays retrofits on a house.</summary>
    /// <param name="house">The house.</param>
    /// <param name="codes">Codes of what is there.</param>
    /// <param name="number">A retrofit's number by code and name.</param>
    public Envelope(HouseModel house, HashSet<string> codes, Func<string, string, double> number)
    {
        (this.house, this.codes, this.number) = (house, codes, number);
        airHeat = house.Catalogue.Default("airHeat");
        (roofU, sideU, endU, airChanges, edge) = (house.RoofU, house.SideU, house.EndU, house.AirChangesPerHour, house.PerimeterWPerMK);
        if (codes.Contains("secondfilm"))
        {
            var level = house.RoofU / house.Catalogue.Value(CatalogueKind.Covering, house.RoofCovering, "uValue");
            var film = level * number("secondfilm", "uValue");
            sideU = sideU == roofU ? film : sideU;
            endU = endU == roofU ? film : endU;
            roofU = film;
            airChanges *= number("secondfilm", "airFactor");
        }

        if (codes.Contains("irfilm"))
        {
            var factor = number("irfilm", "uFactor");
            sideU *= sideU == roofU ? factor : 1;
            endU *= endU == roofU ? factor : 1;
            roofU *= factor;
        }

        if (codes.Contains("seal"))
        {
            airChanges *= number("seal", "airFactor");
        }

        if (codes.Contains("endwalls"))
        {
            var share = number("endwalls", "endShare");
            endU = share / (1 / endU + number("endwalls", "rAdded")) + (1 - share) * endU;
        }

        if (codes.Contains("perimeter"))
        {
            edge *= number("perimeter", "edgeFactor");
        }
    }

    /// <summary>Conductance by path of heat, W/K.</summary>
    /// <param name="roofInsulated">Foam or blanket in place.</param>
    /// <param name="curtainClosed">Flat curtain closed.</param>
    /// <returns>Five numbers in the order of <see cref="HeatPath"/>.</returns>
    public double[] Conductance(string? roofInsulated, bool curtainClosed)
    {
        var g = house.Geometry;
        var kneeM = codes.Contains("kneewall") ? number("kneewall", "wallHeightM") : KneeHeightM;
        var roof = RoofInsulation(roofInsulated);
        double Knee(double u) => codes.Contains("kneewall") ? 1 / (1 / u + number("kneewall", "rAdded")) : u;
        var roofLow = g.RoofBelowM2(kneeM);
        var sideLow = g.SideWallsBelowM2(kneeM);
        var sides = Knee(roof) * roofLow + Knee(sideU) * sideLow + sideU * (g.SideWallsM2 - sideLow);
        var roofHigh = roof * (g.RoofM2 - roofLow);
        var (ends, air, perimeter) = (endU * g.EndWallsM2, airHeat * airChanges * g.VolumeM3, edge * g.PerimeterM);
        if (!curtainClosed)
        {
            return [roofHigh, sides, ends, perimeter, air];
        }

        var h = codes.Contains("curtain") ? Math.Min(house.CurtainHeightM, g.RidgeM - 0.3) : house.CurtainHeightM;
        var roofAbove = roof * (g.RoofM2 - g.RoofBelowM2(h));
        var sideAbove = sideU * (g.SideWallsM2 - g.SideWallsBelowM2(h));
        var endsAbove = endU * (g.EndWallsM2 - g.EndsBelowM2(h));
        var airAbove = airHeat * airChanges * (g.VolumeM3 - g.VolumeBelowM3(h));
        var top = roofAbove + sideAbove + endsAbove + airAbove;
        var open = number("curtain", "openShare");
        var cloth = g.FlatAreaAtM2(h) * ((1 - open) / number("curtain", "rValue") + open * number("curtain", "openConductance"));
        var through = cloth / (cloth + top);
        return
        [
            roofHigh - roofAbove * (1 - through),
            sides - sideAbove * (1 - through),
            ends - endsAbove * (1 - through),
            perimeter,
            airAbove * through + (air - airAbove) * number("curtain", "airFactor"),
        ];
    }

    /// <summary>U of the roof with a movable layer: foam replaces the still gap on its filled share, a blanket adds its resistance on what it covers.</summary>
    private double RoofInsulation(string? code)
    {
        switch (code)
        {
            case "foam":
                var filled = number("foam", "filledShare");
                var r = 1 / roofU - number("foam", "gapR") + number("foam", "rPerM") * house.FilmGapM;
                return (1 - filled) * roofU + filled / Math.Max(r, 1 / roofU);
            case "blanket":
                var covered = number("blanket", "coveredShare");
                return (1 - covered) * roofU + covered / (1 / roofU + number("blanket", "rAdded"));
            default:
                return roofU;
        }
    }

    /// <summary>Heat of the purged air, Wh/K a night.</summary>
    /// <returns>Wh/K.</returns>
    public double PurgeWhPerK() => airHeat * house.PurgeVolumesPerDay * house.Geometry.VolumeM3;
}
