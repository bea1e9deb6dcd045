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
    private readonly double[] levels;

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
        levels = [.. trend.Select((middle, i) => months[i] > lastMonth ? Exp(middle + gap * Pow(shortDecay, i - ahead + 1)) : 0)];
        caseFactor = PriceShape.Factors(set.Shapes, fuel.Fuel, set.SeasonCount);
    }

    public bool Wholesale => fuel.Wholesale;

    /// <summary>Whether the price paid strays from what the index makes of it.</summary>
    public bool HasResidual => fuel.PassThrough is { ResidualSd: > 0 };

    /// <summary>The fuel along a path: from draws to what is paid.</summary>
    /// <param name="unrest">Unrest of the path.</param>
    /// <param name="draws">Short-term draws by month, then long-term ones.</param>
    /// <param name="extra">Added to the log price, by month.</param>
    /// <param name="residuals">Draws of the residual of the price paid, by month; read where there is one.</param>
    /// <param name="paid">Filled: US dollars a unit delivered, by month; before the record's end what was paid last.</param>
    public void Follow(double unrest, ReadOnlySpan<double> draws, ReadOnlySpan<double> extra, ReadOnlySpan<double> residuals, Span<double> paid)
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
        Deliver(residuals, paid);
    }

    /// <summary>Prices of the series into prices paid, month by month.</summary>
    private void Deliver(ReadOnlySpan<double> residuals, Span<double> paid)
    {
        var (now, last, before, residual) = (fuel.LastPrices[0], fuel.LastPrices[1], fuel.LastPrices[2], 0.0);
        if (fuel.PassThrough is not { } p)
        {
            paid[..ahead].Fill(now);
            return;
        }

        paid[..ahead].Fill(p.Constant + p.Now * now + p.Last * last + p.Before * before);
        var (floor, step) = (0.2 * p.Constant, ResidualStep(p));
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

    /// <summary>
    /// What the draws of a month do to what a season's load costs, at the usual unrest and to first order about the middle path: a share of the season's cost. Of a price
    /// that follows an index only the index part moves with it, so a fuel with a large fixed adder counts for less.
    /// </summary>
    /// <param name="firstMonth">Month of the first season's July: 12 x year + month, January = 0.</param>
    /// <param name="season">Season.</param>
    /// <param name="loadShare">Share of the load by month, July first.</param>
    /// <returns>Share of the season's cost a standard normal draw, by month drawn: of the short-term factor, the long-term one, the residual.</returns>
    public (double[] Short, double[] Long, double[] Residual) Response(int firstMonth, int season, IReadOnlyList<double> loadShare)
    {
        var count = months.Length;
        var (index, residual, cost) = (new double[count], new double[count], 0.0);
        for (var i = 0; i < count; i++)
        {
            var within = months[i] - firstMonth - 12 * season;
            if (within is < 0 or >= 12 || months[i] <= lastMonth)
            {
                continue;
            }

            var load = loadShare[within];
            if (fuel.PassThrough is not { } p)
            {
                (index[i], cost) = (index[i] + load * levels[i], cost + load * levels[i]);
                continue;
            }

            residual[i] = load * growth[months[i] - lastMonth];
            cost += residual[i] * p.Constant;
            for (var late = 0; late < 3; late++)
            {
                var weight = load * (late == 0 ? p.Now : late == 1 ? p.Last : p.Before);
                if (i >= late)
                {
                    index[i - late] += weight * levels[i - late];
                }

                cost += weight * (i >= late && levels[i - late] > 0 ? levels[i - late] : fuel.LastPrices[0]);
            }
        }

        if (cost <= 0)
        {
            return (new double[count], new double[count], new double[count]);
        }

        var stray = fuel.PassThrough is { ResidualSd: > 0 } through ? (Ar: through.ResidualAr, Step: ResidualStep(through)) : (Ar: 0, Step: 0);
        return (Felt(index, shortDecay, i => shortStep * Unrest(months[i] % 12)), Felt(index, longDecay, _ => longStep), Felt(residual, stray.Ar, _ => stray.Step));

        // a draw is felt in its own month and, fading, in all that follow
        double[] Felt(double[] weight, double decay, Func<int, double> step)
        {
            var (response, felt) = (new double[count], 0.0);
            for (var i = count - 1; i >= 0; i--)
            {
                felt = decay * felt + weight[i] / cost;
                response[i] = months[i] > lastMonth ? felt * step(i) : 0;
            }

            return response;
        }
    }

    private static double ResidualStep(PassThrough through) => through.ResidualSd * Sqrt(1 - through.ResidualAr * through.ResidualAr);

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
