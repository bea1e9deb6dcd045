using FarmPortfolio.Engine.Scenarios;

namespace FarmPortfolio.Benchmarks;

/// <summary>Drawing normals by counter against drawing them in order by the runtime's own generator (Box and Muller).</summary>
internal static class ScenarioBenchmark
{
    private const int Draws = 200_000;

    public static void Run()
    {
        var random = new Random(1);
        var sink = 0.0;
        var rate = Paired.Rate(Draws, () =>
        {
            for (var i = 0; i < Draws; i++)
            {
                sink += Math.Sqrt(-2 * Math.Log(1 - random.NextDouble())) * Math.Cos(2 * Math.PI * random.NextDouble());
            }
        }, () =>
        {
            for (var i = 0; i < Draws; i++)
            {
                sink += Noise.Normal(1, NoisePurpose.ShortFactor, 0, i, 3);
            }
        });
        Console.WriteLine(FormattableString.Invariant($"normal draws a second: in order {rate.Reference:0.0e0}, by counter {rate.Measured:0.0e0} (sum {sink:0.0})"));
        Console.WriteLine(FormattableString.Invariant($"RATIO draws-plain {rate.Measured / rate.Reference:0.000}"));
    }
}
