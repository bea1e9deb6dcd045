using FarmPortfolio.Engine.Scenarios;

namespace FarmPortfolio.Benchmarks;

/// <summary>The bare problem of the scenario benchmark: options with a load by winter and month, paths with a winter a season and a price a month.</summary>
internal sealed class BareProblem
{
    public const int Tile = 64;
    public const int Months = 12;
    public const int Winters = 15;

    public BareProblem(int options, int paths, int seasons)
    {
        (Options, Paths, Seasons) = (options, paths, seasons);
        (Outlay, Discount) = (new double[options], [.. Enumerable.Range(1, seasons).Select(s => Math.Pow(1.05, -s))]);
        (Load, Quadratic) = (new double[options * Winters * Months], new double[3 * options * Winters * Months]);
        (Price, Winter, Offset) = (new double[paths * seasons * Months], new byte[paths * seasons], new double[paths * seasons]);
        for (var o = 0; o < options; o++)
        {
            var size = 0.5 + Noise.Uniform(1, NoisePurpose.LossOwn, 1, o, 0);
            Outlay[o] = 60 * size * (2 + 18 * Noise.Uniform(1, NoisePurpose.OutlayOwn, 1, o, 0));
            for (var w = 0; w < Winters; w++)
            {
                for (var m = 0; m < Months; m++)
                {
                    var load = size * Math.Max(0, 10 * Math.Cos(2 * Math.PI * (m - 6.5) / 12) + 0.3 * w);
                    var at = ((o / Tile * Winters + w) * Months + m) * Tile + o % Tile;
                    Load[at] = load;
                    var q = ((o / Tile * Winters + w) * Months + m) * 3 * Tile + o % Tile;
                    (Quadratic[q], Quadratic[q + Tile], Quadratic[q + 2 * Tile]) = (load, -0.06 * load, 0.001 * load);
                }
            }
        }

        for (var c = 0; c < Winter.Length; c++)
        {
            Winter[c] = (byte)(Winters * Noise.Uniform(1, NoisePurpose.WinterPlace, 1, c, 0));
            Offset[c] = 0.3 * Noise.Normal(1, NoisePurpose.Offset, 1, c, 0);
            var level = Math.Exp(0.4 * Noise.Normal(1, NoisePurpose.LongFactor, 1, c, 0));
            for (var m = 0; m < Months; m++)
            {
                Price[c * Months + m] = level * (1 + 0.02 * m);
            }
        }
    }

    public int Options { get; }

    public int Paths { get; }

    public int Seasons { get; }

    /// <summary>By tile, winter, month, option.</summary>
    public double[] Load { get; }

    /// <summary>By tile, winter, month, coefficient of the offset, option.</summary>
    public double[] Quadratic { get; }

    /// <summary>By path, season, month.</summary>
    public double[] Price { get; }

    public byte[] Winter { get; }

    public double[] Offset { get; }

    public double[] Outlay { get; }

    public double[] Discount { get; }

    /// <summary>Months of all paths and options.</summary>
    public double OptionMonths => (double)Options * Paths * Seasons * Months;
}

/// <summary>What a loop over the bare problem finds: by option the sum of present values over the paths, and how many paths pay back in each season (0 = never).</summary>
internal sealed class BareResult(BareProblem problem)
{
    public double[] PresentUsd { get; } = new double[problem.Options];

    public int[] Counts { get; } = new int[problem.Options * (problem.Seasons + 1)];

    public void Clear()
    {
        Array.Clear(PresentUsd);
        Array.Clear(Counts);
    }

    /// <summary>Says where two loops differ by more than rounding.</summary>
    public void MustBe(BareResult other, string name)
    {
        for (var o = 0; o < PresentUsd.Length; o++)
        {
            if (Math.Abs(PresentUsd[o] - other.PresentUsd[o]) > 1e-9 * Math.Abs(other.PresentUsd[o]))
            {
                throw new InvalidOperationException(FormattableString.Invariant($"{name}: present value of option {o} is {PresentUsd[o]:R}, {other.PresentUsd[o]:R} by the other loop"));
            }
        }

        var apart = Counts.Zip(other.Counts, (a, b) => Math.Abs(a - b)).Sum();
        if (apart > 1e-6 * Counts.Sum(c => (double)c) + 2)
        {
            throw new InvalidOperationException(FormattableString.Invariant($"{name}: {apart} paybacks counted in another season"));
        }
    }
}
