namespace FarmPortfolio.Benchmarks;

/// <summary>The bare problem one option, one path, one month at a time.</summary>
internal static class PlainScenario
{
    public static void Run(BareProblem p, BareResult result)
    {
        result.Clear();
        for (var o = 0; o < p.Options; o++)
        {
            for (var path = 0; path < p.Paths; path++)
            {
                var (cumulated, present, paid) = (0.0, 0.0, 0);
                for (var s = 0; s < p.Seasons; s++)
                {
                    var cell = path * p.Seasons + s;
                    var load = (o / BareProblem.Tile * BareProblem.Winters + p.Winter[cell]) * BareProblem.Months * BareProblem.Tile + o % BareProblem.Tile;
                    var saving = 0.0;
                    for (var m = 0; m < BareProblem.Months; m++)
                    {
                        saving += p.Load[load + m * BareProblem.Tile] * p.Price[cell * BareProblem.Months + m];
                    }

                    cumulated += saving;
                    present += saving * p.Discount[s];
                    paid = paid == 0 && cumulated >= p.Outlay[o] ? s + 1 : paid;
                }

                result.PresentUsd[o] += present;
                result.Counts[o * (p.Seasons + 1) + paid]++;
            }
        }
    }
}
