using FarmPortfolio.Engine.HeatDemand;
using FarmPortfolio.Engine.Retrofits;

namespace FarmPortfolio.Engine.Economics;

/// <summary>The catalogue's outlay of a retrofit, sized to a house.</summary>
internal static class CatalogueOutlay
{
    internal static IReadOnlyList<CostLine> Of(HouseModel house, string code, string title, OptionTiming timing)
    {
        double N(string name) => house.Catalogue.Value(CatalogueKind.Retrofit, code, name);
        var g = house.Geometry;
        var lines = new List<CostLine>();
        void Add(string what, double usd, double? quantity = null, string? unit = null)
        {
            if (usd > 0)
            {
                lines.Add(new(what, usd, null, quantity, unit));
            }
        }

        Add($"{title}: fixed part", N("outlayUsd"));
        Add($"{title}: by floor", N("outlayPerFloor") * g.FloorM2, g.FloorM2, "m2");
        Add($"{title}: by cover", N("outlayPerCover") * house.CoverM2, house.CoverM2, "m2");
        var knee = 2 * g.LengthM * N("wallHeightM");
        Add($"{title}: by wall", N("outlayPerKneeWall") * knee, knee, "m2");
        var ends = g.EndWallsM2 * N("endShare");
        Add($"{title}: by end wall", N("outlayPerEndWall") * ends, ends, "m2");
        Add($"{title}: by edge", N("outlayPerPerimeter") * g.PerimeterM, g.PerimeterM, "m");
        var input = house.Heaters[0].OutputKw / (FuelSwitch.FuelOf(code) is null ? house.Heaters[0].Efficiency : N("efficiency"));
        input = double.IsInfinity(input) ? 75 : input;
        Add($"{title}: by rated input", N("outlayPerInputKw") * input, input, "kW");
        if (N("premiumPerCover") > 0)
        {
            Add($"{title}: premium over plain film", N("premiumPerCover") * house.CoverM2, house.CoverM2, "m2");
            if (timing == OptionTiming.Now)
            {
                Add("Both films renewed before their time", N("earlyPerCover") * house.CoverM2, house.CoverM2, "m2");
            }
        }

        return lines;
    }
}
