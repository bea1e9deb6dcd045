using FarmPortfolio.Engine.Farms;
using FarmPortfolio.Engine.Retrofits;

namespace FarmPortfolio.Engine.HeatDemand;

/// <summary>The surfaces of a house with a set of retrofits, and the conductance of every state of what moves. Steady resistances in series and side by side (ASABE EP406).</summary>
internal sealed class Envelope
{
    private const double KneeHeightM = 3 * Units.Us.FootM;

    private readonly HouseModel house;
    private readonly OptionNumbers numbers;
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
    /// <param name="numbers">The retrofits' numbers.</param>
    public Envelope(HouseModel house, HashSet<string> codes, OptionNumbers numbers)
    {
        (this.house, this.codes, this.numbers) = (house, codes, numbers);
        airHeat = house.Catalogue.Default("airHeat");
        (roofU, sideU, endU, airChanges, edge) = (house.RoofU, house.SideU, house.EndU, house.AirChangesPerHour, house.PerimeterWPerMK);
        var (sideAsRoof, endAsRoof) = (sideU == roofU, endU == roofU);
        if (codes.Contains("secondfilm"))
        {
            var level = house.RoofU / house.Catalogue.Value(CatalogueKind.Covering, house.RoofCovering, "uValue");
            roofU = Math.Min(roofU, level * numbers.Of("secondfilm", "uValue"));
            airChanges *= numbers.Of("secondfilm", "airFactor");
        }

        roofU *= codes.Contains("irfilm") ? numbers.Of("irfilm", "uFactor") : 1;
        (sideU, endU) = (sideAsRoof ? roofU : sideU, endAsRoof ? roofU : endU);
        airChanges *= codes.Contains("seal") ? numbers.Of("seal", "airFactor") : 1;
        edge *= codes.Contains("perimeter") ? numbers.Of("perimeter", "edgeFactor") : 1;
    }

    /// <summary>Conductance by path of heat, W/K.</summary>
    /// <param name="inPlace">Codes of the movables in place.</param>
    /// <returns>Five numbers in the order of <see cref="HeatPath"/>.</returns>
    public double[] Conductance(IReadOnlyCollection<string> inPlace)
    {
        var g = house.Geometry;
        var knee = codes.Contains("kneewall");
        var kneeM = knee ? numbers.Of("kneewall", "wallHeightM") : KneeHeightM;
        var roof = RoofWith(inPlace);
        double Low(double u) => knee ? Boarded(u, "kneewall") : u;
        var (roofLow, sideLow) = (g.RoofBelowM2(kneeM), g.SideWallsBelowM2(kneeM));
        var sides = Low(roof) * roofLow + Low(sideU) * sideLow + sideU * (g.SideWallsM2 - sideLow);
        var roofHigh = roof * (g.RoofM2 - roofLow);
        var ends = Ends(g.EndWallsM2, kneeM);
        var (air, perimeter) = (airHeat * airChanges * g.VolumeM3, edge * g.PerimeterM);
        if (!inPlace.Contains("curtain"))
        {
            return [roofHigh, sides, ends, perimeter, air];
        }

        var space = g.Curtain(house.CurtainShape, house.CurtainHeightM, house.CurtainTopM);
        var roofAbove = roof * space.RoofAboveM2;
        var sideAbove = sideU * space.SidesAboveM2;
        var boardedShare = codes.Contains("endwalls") ? numbers.Of("endwalls", "endShare") : 0;
        var endsAbove = space.EndsAboveM2 * (boardedShare * Boarded(endU, "endwalls") + (1 - boardedShare) * endU);
        var airAbove = airHeat * airChanges * space.VolumeAboveM3;
        var top = roofAbove + sideAbove + endsAbove + airAbove;
        var open = numbers.Of("curtain", "openShare");
        var cloth = space.ClothM2 * ((1 - open) / numbers.Of("curtain", "rValue") + open * numbers.Of("curtain", "openConductance"));
        var through = cloth / (cloth + top);
        return
        [
            roofHigh - roofAbove * (1 - through),
            sides - sideAbove * (1 - through),
            ends - endsAbove * (1 - through),
            perimeter,
            airAbove * through + (air - airAbove) * numbers.Of("curtain", "airFactor"),
        ];
    }

    /// <summary>Heat of the purged air, Wh/K a night.</summary>
    /// <returns>Wh/K.</returns>
    public double PurgeWhPerK() => airHeat * house.PurgeVolumesPerDay * house.Geometry.VolumeM3;

    /// <summary>Both ends: the board of the end walls on its share, and where the knee board runs round the ends what of them is still bare; no area twice.</summary>
    private double Ends(double areaM2, double kneeM)
    {
        var share = codes.Contains("endwalls") ? numbers.Of("endwalls", "endShare") : 0;
        var bare = areaM2 * (1 - share);
        var low = codes.Contains("kneewall") && numbers.Of("kneewall", "includesEnds") > 0 ? house.Geometry.EndsBelowM2(kneeM) * (1 - share) : 0;
        return (share > 0 ? areaM2 * share * Boarded(endU, "endwalls") : 0) + (low > 0 ? low * Boarded(endU, "kneewall") : 0) + (bare - low) * endU;
    }

    private double Boarded(double u, string code) => 1 / (1 / u + numbers.Of(code, "rAdded"));

    /// <summary>U of the roof with what moves on it: foam replaces the still gap on its filled share, a blanket under it adds its resistance on what it covers.</summary>
    private double RoofWith(IReadOnlyCollection<string> inPlace)
    {
        var u = roofU;
        if (inPlace.Contains("foam"))
        {
            u = Layered(u, numbers.Of("foam", "filledShare"), numbers.Of("foam", "rPerM") * house.FilmGapM - numbers.Of("foam", "gapR"));
        }

        return inPlace.Contains("blanket") ? Layered(u, numbers.Of("blanket", "coveredShare") * (1 - numbers.Of("blanket", "openShare")), numbers.Of("blanket", "rAdded")) : u;
    }

    /// <summary>A resistance added on a share of a surface; never one that takes insulation away.</summary>
    private static double Layered(double u, double share, double added) => (1 - share) * u + share / (1 / u + Math.Max(0, added));
}
