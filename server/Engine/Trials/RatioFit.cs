using static System.Math;

namespace FarmPortfolio.Engine.Trials;

/// <summary>
/// The statistics of a trial: what the control used, moved to the treated house's degree hours by the control's own slope, tells what the treated house would
/// have used; idle nights tell how alike the houses are. Errors by blocks of seven nights, so that nights that hang together count as one.
/// </summary>
internal sealed class RatioFit
{
    private readonly double slope;
    private readonly double slopeVariance;
    private readonly double blockVariance;
    private readonly double meanBlockKwh;
    private readonly double idleKwh;
    private readonly double idleShift;

    /// <summary>Fits a trial.</summary>
    /// <param name="use">Pairs with the retrofit in use, broken nights included.</param>
    /// <param name="idle">Pairs with it idle that are to be used; empty = the houses' difference is taken from the model.</param>
    /// <param name="modelledRatio">Treated over control as both stand, by the model; used where no idle pair is.</param>
    public RatioFit(IReadOnlyList<TrialPair> use, IReadOnlyList<TrialPair> idle, double modelledRatio)
    {
        (Use, IdleKnown) = (use, idle.Count > 0);
        (slope, slopeVariance) = Slope([.. use, .. idle]);
        Ratio = IdleKnown ? idle.Sum(p => p.TreatedKwh) / idle.Sum(Moved) : modelledRatio;
        var useRatio = use.Sum(p => p.TreatedKwh) / use.Sum(Moved);
        Saving = 1 - useRatio / Ratio;
        var runRatio = IdleKnown ? idle.Sum(p => p.TreatedKwh) / idle.Sum(p => p.ControlKwh) : modelledRatio;
        AsRunSaving = 1 - use.Sum(p => p.TreatedKwh) / use.Sum(p => p.ControlKwh) / runRatio;
        ReferenceKwh = Ratio * use.Sum(Moved);
        var (useBlocks, idleBlocks) = (Blocks(use, useRatio), Blocks(idle, Ratio));
        DegreesOfFreedom = useBlocks.Count + idleBlocks.Count - (IdleKnown ? 2 : 1);
        var all = useBlocks.Concat(idleBlocks).ToList();
        meanBlockKwh = all.Average(b => b.Kwh);
        blockVariance = DegreesOfFreedom > 0 ? all.Sum(b => b.Kwh / meanBlockKwh * b.Off * b.Off) / DegreesOfFreedom : double.PositiveInfinity;
        (idleKwh, idleShift) = IdleKnown ? (idle.Sum(Moved), Shift(idle)) : (double.PositiveInfinity, 0);
        (UseBlocks, IdleBlocks) = (useBlocks.Count, idleBlocks.Count);
    }

    /// <summary>Pairs in use.</summary>
    public IReadOnlyList<TrialPair> Use { get; }

    /// <summary>Whether idle nights tell how alike the houses are.</summary>
    public bool IdleKnown { get; }

    /// <summary>Treated house over control, both as they stand.</summary>
    public double Ratio { get; }

    /// <summary>Saving of heat at the treated house's own inside temperature, share.</summary>
    public double Saving { get; }

    /// <summary>Saving of heat as the houses were run, share.</summary>
    public double AsRunSaving { get; }

    /// <summary>Heat the treated house would have used as it stands, kWh.</summary>
    public double ReferenceKwh { get; }

    /// <summary>Blocks of seven nights in use.</summary>
    public int UseBlocks { get; }

    /// <summary>Blocks of seven nights idle.</summary>
    public int IdleBlocks { get; }

    /// <summary>Degrees of freedom of the block spread.</summary>
    public int DegreesOfFreedom { get; }

    /// <summary>Spread of a block's use about the ratio, share of its use.</summary>
    public double BlockSd => Sqrt(blockVariance);

    /// <summary>What the treated house would have used on a pair, were it as the control: kWh before the houses' difference.</summary>
    public double Moved(TrialPair p) => p.ControlKwh + slope * (p.TreatedDegreeHours - p.ControlDegreeHours);

    /// <summary>Variance of ln(use in part of the nights / reference), without the doubt about unlike houses.</summary>
    /// <param name="part">Pairs.</param>
    public double RelativeVariance(IReadOnlyList<TrialPair> part)
    {
        var kwh = part.Sum(Moved);
        return blockVariance * meanBlockKwh * (1 / kwh + 1 / idleKwh) + slopeVariance * Pow(Shift(part) - idleShift, 2);
    }

    /// <summary>Saving over part of the nights in use.</summary>
    /// <param name="part">Pairs.</param>
    public double SavingOf(IReadOnlyList<TrialPair> part) => 1 - part.Sum(p => p.TreatedKwh) / (Ratio * part.Sum(Moved));

    private double Shift(IReadOnlyList<TrialPair> part) => part.Sum(p => p.TreatedDegreeHours - p.ControlDegreeHours) / part.Sum(Moved);

    private List<(double Kwh, double Off)> Blocks(IReadOnlyList<TrialPair> pairs, double ratio) => [.. pairs.GroupBy(p => p.Block).OrderBy(g => g.Key)
        .Select(g => (Kwh: g.Sum(Moved), Treated: g.Sum(p => p.TreatedKwh))).Where(b => b.Kwh > 0).Select(b => (b.Kwh, b.Treated / (ratio * b.Kwh) - 1))];

    /// <summary>Control's heat on hours and degree hours by least squares; variance of the slope robust to what hangs together in a block.</summary>
    private static (double Slope, double Variance) Slope(IReadOnlyList<TrialPair> pairs)
    {
        var (hh, hd, dd, hy, dy) = (0.0, 0.0, 0.0, 0.0, 0.0);
        foreach (var p in pairs)
        {
            hh += p.Hours * p.Hours;
            hd += p.Hours * p.ControlDegreeHours;
            dd += p.ControlDegreeHours * p.ControlDegreeHours;
            hy += p.Hours * p.ControlKwh;
            dy += p.ControlDegreeHours * p.ControlKwh;
        }

        var det = hh * dd - hd * hd;
        if (!(det > 1e-9 * hh * dd))
        {
            // one temperature throughout: the line goes through no use at no lift
            return (dd > 0 ? dy / dd : 0, 0);
        }

        var (a, b) = ((dd * hy - hd * dy) / det, (hh * dy - hd * hy) / det);
        var meat = pairs.GroupBy(p => p.Block).Sum(g => Pow(g.Sum(p => (hh * p.ControlDegreeHours - hd * p.Hours) / det * (p.ControlKwh - a * p.Hours - b * p.ControlDegreeHours)), 2));
        return (b, meat);
    }
}
