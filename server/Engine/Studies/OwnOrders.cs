using FarmPortfolio.Engine.HeatDemand;
using FarmPortfolio.Engine.Scenarios;
using static System.Math;

namespace FarmPortfolio.Engine.Studies;

/// <summary>
/// Orders of the paths along which a house's own errors are spread evenly, one after the other: each along the sum, in logs, of what is drawn already and moves a payback as it does. The last
/// one drawn, the saving's, meets every mixture of the others evenly (sorted as in array-RQMC; L'Ecuyer, Lecot and Tuffin 2008). Only the order rests on these sums, never a draw's law.
/// </summary>
/// <param name="context">What all houses share.</param>
/// <param name="house">House.</param>
/// <param name="own">The house's own draws.</param>
/// <param name="loss">Loss multiplier by path.</param>
internal sealed class OwnOrders(StudyContext context, StudyHouse house, PathNoise own, double[] loss)
{
    /// <summary>Spread of an outlay's logarithm that the order takes for every option: an option must not move the draws of another.</summary>
    private const double OutlaySd = 0.15;

    private double[]? standing;
    private double[]? overOutlay;

    /// <summary>Order for the house's air changes: what the fuel costs as it stands.</summary>
    /// <returns>The order; null for plain paths.</returns>
    public PathOrder? Air() => context.ByPrice(house.Fuel) is null ? null : Order(Standing());

    /// <summary>Order for the house's own error of the outlay: what the fuel costs, less what quotes of the year cost.</summary>
    /// <returns>The order; null for plain paths.</returns>
    public PathOrder? Outlay() => context.ByPrice(house.Fuel) is null ? null : Order(OverQuotes());

    /// <summary>Order for the house's own error of a retrofit's saving: all the rest.</summary>
    /// <param name="code">Retrofit.</param>
    /// <returns>The order; null for plain paths.</returns>
    public PathOrder? Saving(string code)
    {
        if (context.ByPrice(house.Fuel) is null)
        {
            return null;
        }

        var (catalogue, score) = (house.Model.Catalogue, new double[loss.Length]);
        var common = Sqrt(context.Set.CommonShare) * catalogue.Value(Retrofits.CatalogueKind.Retrofit, code, "factorSd", 0) / Max(0.1, catalogue.Value(Retrofits.CatalogueKind.Retrofit, code, "factorMean", 1));
        Rows.AddTwo(score, 1, OverOutlay(), common, context.Shared.Of(NoisePurpose.SavingCommon, Noise.Key(code)));
        return Order(score);
    }

    private double[] Standing()
    {
        if (standing is null)
        {
            var price = context.ByPrice(house.Fuel)!.Score;
            standing = new double[loss.Length];
            for (var p = 0; p < loss.Length; p++)
            {
                standing[p] = Elementary.Log(price[p] * loss[p]);
            }
        }

        return standing;
    }

    private double[] OverQuotes()
    {
        var over = Standing().ToArray();
        Rows.Add(over, -OutlaySd * Sqrt(context.Set.CommonShare), context.Shared.Of(NoisePurpose.OutlayCommon, context.Set.FirstSeason));
        return over;
    }

    private double[] OverOutlay()
    {
        if (overOutlay is null)
        {
            overOutlay = OverQuotes();
            Rows.Add(overOutlay, -OutlaySd * Sqrt(1 - context.Set.CommonShare), own.Of(NoisePurpose.OutlayOwn, house.Model.Facts.DrawKey, Outlay));
        }

        return overOutlay;
    }

    private PathOrder Order(double[] score) => PathOrder.Roughly(score, context.Replicates);
}
