using FarmPortfolio.Engine.Fuel;
using FarmPortfolio.Engine.Units;
using static System.Math;

namespace FarmPortfolio.Engine.Scenarios;

/// <summary>One fuel along one path.</summary>
internal sealed class FuelTrack
{
    private const double Month = 1.0 / 12;
    private readonly FuelSpec fuel;
    private readonly ScenarioSetFacts set;
    private readonly int lastMonth;
    private readonly double level;
    private readonly double gap;
    private readonly double[] shape = new double[12];
    private readonly double shortDecay;
    private readonly double longDecay;
    private readonly double shortStep;
    private readonly double longStep;
    private readonly double kwhPerUnit;
    private readonly double[] meanShift;
    private readonly double[] growth;
    private readonly double[] caseFactor;
    private readonly double calm;
    private readonly double stormy;
    private double chi;
    private double xi;
    private double residual;
    private double now;
    private double last;
    private double before;
    private double delivered;

    public FuelTrack(FuelSpec fuel, ScenarioSetFacts set, int firstMonth)
    {
        (this.fuel, this.set) = (fuel, set);
        var m = fuel.Model;
        lastMonth = 12 * m.LastMonthOn.Year + m.LastMonthOn.Month - 1;
        var own = set.Prices.FirstOrDefault(p => p.Fuel == fuel.Fuel)?.LevelUsdPerUnit;
        var yearsToFirst = Max(0, firstMonth - lastMonth) * Month;
        (level, gap) = own is { } given ? (Log(given) - m.Growth * yearsToFirst, 0) : (m.Level, m.Gap);
        var mean = m.Shape.Average(Exp);
        for (var i = 0; i < 12; i++)
        {
            shape[i] = m.Shape[i] - Log(mean);
        }

        shortDecay = Exp(-m.ShortReversion * Month);
        longDecay = Exp(-m.LongReversion * Month);
        shortStep = m.ShortVolatility * Sqrt(m.ShortReversion > 0 ? (1 - shortDecay * shortDecay) / (2 * m.ShortReversion) : Month);
        longStep = m.LongVolatility * Sqrt(m.LongReversion > 0 ? (1 - longDecay * longDecay) / (2 * m.LongReversion) : Month);
        kwhPerUnit = HeatingValues.KwhPerUnit(fuel.Fuel, fuel.DeliveredUnit) ?? throw new ArgumentException($"{fuel.Fuel} is not sold by the {fuel.DeliveredUnit}", nameof(fuel));
        var coldTerm = fuel.Fuel == FuelKind.NaturalGas && set.ColdMonthTerm;
        (stormy, calm) = fuel.Wholesale ? (coldTerm ? 1.25 : 1.45, 0.45) : (1, 1);
        meanShift = MeanShifts(firstMonth);
        growth = [.. Enumerable.Range(0, meanShift.Length).Select(i => Exp(m.Growth * i * Month))];
        caseFactor = PriceShape.Factors(set.Shapes, fuel.Fuel, set.SeasonCount);
    }

    public bool Wholesale => fuel.Wholesale;

    public void Start()
    {
        (chi, xi, residual) = (gap, 0, 0);
        (now, last, before) = (fuel.LastPrices[0], fuel.LastPrices[1], fuel.LastPrices[2]);
        delivered = fuel.PassThrough is { } p ? p.Constant + p.Now * now + p.Last * last + p.Before * before : now;
    }

    public void Step(int month, double unrest, double z1, double z2, double extra, int path)
    {
        var steps = month - lastMonth;
        if (steps <= 0)
        {
            return;
        }

        var calendar = month % 12;
        chi = shortDecay * chi + unrest * Unrest(calendar) * shortStep * z1;
        xi = longDecay * xi + unrest * longStep * z2;
        (before, last) = (last, now);
        now = Elementary.Exp(level + fuel.Model.Growth * steps * Month + shape[calendar] - meanShift[steps] + xi + chi + extra);
        if (fuel.PassThrough is { ResidualSd: > 0 } through)
        {
            residual = through.ResidualAr * residual +
                through.ResidualSd * Sqrt(1 - through.ResidualAr * through.ResidualAr) * Noise.Normal(set.Seed, NoisePurpose.RetailResidual, (int)fuel.Fuel, path, month);
        }

        if (fuel.PassThrough is { } p)
        {
            var floor = 0.2 * p.Constant;
            delivered = Max(floor, (p.Constant + residual) * growth[steps] + p.Now * now + p.Last * last + p.Before * before);
        }
        else
        {
            delivered = now;
        }
    }

    public double UsdPerKwh(int season) => delivered * caseFactor[season] / kwhPerUnit;

    /// <summary>What the draws of a month do to the log price of a season's load, at the usual unrest.</summary>
    /// <param name="factor">0 = short-term, 1 = long-term.</param>
    /// <param name="firstMonth">Month of the first season's July: 12 x year + month, January = 0.</param>
    /// <param name="season">Season.</param>
    /// <param name="loadShare">Share of the load by month, July first.</param>
    /// <param name="months">Months drawn, rising one by one.</param>
    /// <returns>Log price a standard normal draw, by month drawn.</returns>
    public double[] Response(int factor, int firstMonth, int season, IReadOnlyList<double> loadShare, int[] months)
    {
        var (decay, step) = factor == 0 ? (shortDecay, shortStep) : (longDecay, longStep);
        var (response, felt) = (new double[months.Length], 0.0);
        for (var i = months.Length - 1; i >= 0; i--)
        {
            var within = months[i] - firstMonth - 12 * season;
            felt = decay * felt + (within is >= 0 and < 12 ? loadShare[within] : 0);
            response[i] = months[i] > lastMonth ? felt * step * (factor == 0 ? Unrest(months[i] % 12) : 1) : 0;
        }

        return response;
    }

    private double Unrest(int calendarMonth) => calendarMonth is >= 10 or <= 2 ? stormy : calm;

    private double[] MeanShifts(int firstMonth)
    {
        var count = Max(1, firstMonth + 12 * set.SeasonCount - lastMonth);
        var shifts = new double[count];
        if (set.LevelMeaning == LevelMeaning.Middle)
        {
            return shifts;
        }

        var (vc, vx) = (0.0, 0.0);
        for (var i = 1; i < count; i++)
        {
            var g = Unrest((lastMonth + i) % 12);
            vc = shortDecay * shortDecay * vc + g * g * shortStep * shortStep;
            vx = longDecay * longDecay * vx + longStep * longStep;
            shifts[i] = PriceModel.MeanOverMedian(vc + vx);
        }

        return shifts;
    }
}
