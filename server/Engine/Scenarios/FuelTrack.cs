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
    private readonly int[] months;
    private readonly int ahead;
    private readonly double[] trend;
    private readonly double[] residuals;

    public FuelTrack(FuelSpec fuel, ScenarioSetFacts set, int firstMonth, int[] months)
    {
        (this.fuel, this.set, this.months) = (fuel, set, months);
        var m = fuel.Model;
        lastMonth = 12 * m.LastMonthOn.Year + m.LastMonthOn.Month - 1;
        var own = set.Prices.FirstOrDefault(p => p.Fuel == fuel.Fuel)?.LevelUsdPerUnit;
        var yearsToFirst = Max(0, firstMonth - lastMonth) * Month;
        var (level, before) = own is { } given ? (Log(given) - m.Growth * yearsToFirst, 0) : (m.Level, m.Gap);
        gap = before;
        var mean = m.Shape.Average(Exp);
        for (var i = 0; i < 12; i++)
        {
            shape[i] = m.Shape[i] - Log(mean);
        }

        shortDecay = Exp(-m.ShortReversion * Month);
        longDecay = Exp(-m.LongReversion * Month);
        shortStep = m.ShortVolatility * Sqrt(m.ShortReversion > 0 ? (1 - shortDecay * shortDecay) / (2 * m.ShortReversion) : Month);
        longStep = m.LongVolatility * Sqrt(m.LongReversion > 0 ? (1 - longDecay * longDecay) / (2 * m.LongReversion) : Month);
        kwhPerUnit = HeatingValues.KwhPerUnit(fuel.Fuel, fuel.DeliveredUnit, set.HeatingValues()) ?? throw new ArgumentException($"{fuel.Fuel} is not sold by the {fuel.DeliveredUnit}", nameof(fuel));
        var coldTerm = fuel.Fuel == FuelKind.NaturalGas && set.ColdMonthTerm;
        (stormy, calm) = fuel.Wholesale ? (coldTerm ? 1.25 : 1.45, 0.45) : (1, 1);
        meanShift = MeanShifts(firstMonth);
        growth = [.. Enumerable.Range(0, meanShift.Length).Select(i => Exp(m.Growth * i * Month))];
        ahead = months.Count(month => month <= lastMonth);
        trend = [.. months.Select(month => month > lastMonth ? level + m.Growth * (month - lastMonth) * Month + shape[month % 12] - meanShift[month - lastMonth] : 0)];
        residuals = new double[months.Length];
        caseFactor = PriceShape.Factors(set.Shapes, fuel.Fuel, set.SeasonCount);
    }

    public bool Wholesale => fuel.Wholesale;

    /// <summary>The fuel along a path: from draws to what is paid.</summary>
    /// <param name="unrest">Unrest of the path.</param>
    /// <param name="draws">Short-term draws by month, then long-term ones.</param>
    /// <param name="extra">Added to the log price, by month.</param>
    /// <param name="path">Path over all replicates.</param>
    /// <param name="paid">Filled: US dollars a unit delivered, by month; before the record's end what was paid last.</param>
    public void Follow(double unrest, ReadOnlySpan<double> draws, ReadOnlySpan<double> extra, int path, Span<double> paid)
    {
        var (chi, xi) = (gap, 0.0);
        for (var i = 0; i < months.Length; i++)
        {
            if (months[i] > lastMonth)
            {
                chi = shortDecay * chi + unrest * Unrest(months[i] % 12) * shortStep * draws[i];
                xi = longDecay * xi + unrest * longStep * draws[months.Length + i];
                paid[i] = trend[i] + xi + chi + extra[i];
            }
        }

        Elementary.Exp(paid[ahead..]);
        Deliver(path, paid);
    }

    /// <summary>Prices of the series into prices paid, month by month.</summary>
    private void Deliver(int path, Span<double> paid)
    {
        var (now, last, before, residual) = (fuel.LastPrices[0], fuel.LastPrices[1], fuel.LastPrices[2], 0.0);
        if (fuel.PassThrough is not { } p)
        {
            paid[..ahead].Fill(now);
            return;
        }

        paid[..ahead].Fill(p.Constant + p.Now * now + p.Last * last + p.Before * before);
        if (p.ResidualSd > 0)
        {
            Noise.NormalPairs(set.Seed, NoisePurpose.RetailResidual, (int)fuel.Fuel, path, months[0], residuals, []);
        }

        var (floor, step) = (0.2 * p.Constant, p.ResidualSd * Sqrt(1 - p.ResidualAr * p.ResidualAr));
        for (var i = ahead; i < months.Length; i++)
        {
            (before, last, now) = (last, now, paid[i]);
            residual = p.ResidualSd > 0 ? p.ResidualAr * residual + step * residuals[i] : residual;
            paid[i] = Max(floor, (p.Constant + residual) * growth[months[i] - lastMonth] + p.Now * now + p.Last * last + p.Before * before);
        }
    }

    /// <summary>A price paid in the program's unit, price cases laid over it.</summary>
    /// <param name="season">Season.</param>
    /// <param name="paid">US dollars a unit delivered.</param>
    /// <returns>US dollars a kWh of fuel.</returns>
    public double UsdPerKwh(int season, double paid) => paid * caseFactor[season] / kwhPerUnit;

    /// <summary>What the draws of a month do to the log price of a season's load, at the usual unrest.</summary>
    /// <param name="factor">0 = short-term, 1 = long-term.</param>
    /// <param name="firstMonth">Month of the first season's July: 12 x year + month, January = 0.</param>
    /// <param name="season">Season.</param>
    /// <param name="loadShare">Share of the load by month, July first.</param>
    /// <returns>Log price a standard normal draw, by month drawn.</returns>
    public double[] Response(int factor, int firstMonth, int season, IReadOnlyList<double> loadShare)
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
