using FarmPortfolio.Engine.HeatDemand;
using FarmPortfolio.Engine.Retrofits;
using FarmPortfolio.Engine.Scenarios;
using static System.Math;

namespace FarmPortfolio.Engine.Studies;

/// <summary>
/// What the air changes, which nobody measured, do to a saving: one factor on them a house and path, lognormal about what the bills leave (<see cref="HeatDemand.Calibration.LossFit"/>), the films moved so that the house
/// as it stands burns the same. An option's share of the fuel saved is reckoned in the middling winter at the factors that one in ten is below and above and at the middle; a quadratic through
/// them, over the share saved as described and never below 0, multiplies the saving of the path.
/// </summary>
internal sealed class AirCurves
{
    /// <summary>Least share of the fuel that an option must save for its saving to be scaled.</summary>
    private const double LeastShare = 0.005;

    private readonly (double A, double B, double C)[] curves;

    private AirCurves((double, double, double)[] curves) => this.curves = curves;

    /// <summary>Reckons the curves of a house's options.</summary>
    /// <param name="house">House.</param>
    /// <param name="options">Options that fit it.</param>
    /// <param name="models">As it stands, then the options in order.</param>
    /// <returns>The curves.</returns>
    public static AirCurves Of(StudyHouse house, OptionFacts[] options, OptionModel[] models)
    {
        var (middle, sd) = (house.Loss.AirFactor, house.Loss.AirSdLn);
        if (options.Length == 0 || (sd == 0 && middle == 1))
        {
            return new([]);
        }

        var curves = new (double, double, double)[options.Length];
        var step = sd == 0 ? 1 : Elementary.Exp(AirLeaks.OneInTen * sd);
        var knots = sd == 0 ? [middle] : new[] { middle / step, middle, middle * step };
        var leaky = knots.Where(k => k != 1).ToArray();
        var all = models.Concat(leaky.SelectMany(k => Models(AirLeaks.SameLoss(house.Model, k), options))).ToArray();
        var kwh = DemandTables.SeasonKwh(all, house.Middling);
        var from = knots.Select(k => k == 1 ? 0 : (Array.IndexOf(leaky, k) + 1) * models.Length).ToArray();
        for (var o = 0; o < options.Length; o++)
        {
            var described = Share(all, kwh, 0, o);
            var ratios = from.Select(at => Abs(described) < LeastShare || at == 0 ? 1 : Share(all, kwh, at, o) / described).ToArray();
            curves[o] = ratios.Length == 1 ? (ratios[0], 0, 0) : Through(knots, ratios);
        }

        return new(curves);
    }

    /// <summary>The factor on a house's air changes by path.</summary>
    /// <param name="house">House.</param>
    /// <param name="own">The house's own draws.</param>
    /// <param name="order">Gives the order along which they are spread.</param>
    /// <returns>One a path; empty where they change no saving.</returns>
    public double[] Factor(StudyHouse house, PathNoise own, Func<PathOrder?> order)
    {
        if (curves.Length == 0)
        {
            return [];
        }

        var normals = own.Of(NoisePurpose.AirOwn, house.Model.Facts.DrawKey, order);
        var factor = new double[normals.Length];
        Rows.Line(0, house.Loss.AirSdLn, normals, factor);
        Elementary.Exp(factor);
        Rows.Line(0, house.Loss.AirFactor, factor, factor);
        return factor;
    }

    /// <summary>Multiplies a value a path by what the path's air changes do to an option's saving.</summary>
    /// <param name="values">One a path.</param>
    /// <param name="factor">What <see cref="Factor"/> gave.</param>
    /// <param name="option">Number of the option.</param>
    public void Multiply(Span<double> values, double[] factor, int option)
    {
        if (factor.Length > 0)
        {
            var (a, b, c) = curves[option];
            Rows.TimesQuadratic(values, factor, a, b, c);
        }
    }

    private static OptionModel[] Models(HouseModel house, OptionFacts[] options) =>
        [OptionModels.AsItStands(house), .. options.Select(o => OptionModels.Of(house, o).Model ?? throw new InvalidOperationException($"Option {o.Key} fits the house as described and not with other leaks."))];

    /// <summary>Share of the fuel that an option saves among models that start with the house as it stands.</summary>
    private static double Share(OptionModel[] all, double[] kwh, int from, int option)
    {
        var (standing, with) = (kwh[from] / all[from].Efficiency, kwh[from + 1 + option] / all[from + 1 + option].Efficiency);
        return standing > 0 ? 1 - with / standing : 0;
    }

    /// <summary>a + b x + c x^2 through three points.</summary>
    private static (double A, double B, double C) Through(double[] x, double[] y)
    {
        var first = (y[1] - y[0]) / (x[1] - x[0]);
        var c = ((y[2] - y[1]) / (x[2] - x[1]) - first) / (x[2] - x[0]);
        var b = first - c * (x[0] + x[1]);
        return (y[0] - x[0] * (b + c * x[0]), b, c);
    }
}
