using FarmPortfolio.Engine.Scenarios;

namespace FarmPortfolio.Benchmarks;

/// <summary>
/// Drawing normals by counter against drawing them in order; then the bare loop of a study, 8,192 options x 10,000 paths x 15 seasons x 15 winters, in vectors
/// against a scalar loop, against NumPy and against C++, on as many threads as there are processors, with 12 terms a season and, demand a quadratic in an offset, with 36.
/// </summary>
internal static class ScenarioBenchmark
{
    private const int Draws = 200_000;

    public static void Run()
    {
        RunDraws();
        RunPlain();
        RunNumpy();
        using var native = NativeScenario.Build();
        if (native is null)
        {
            Console.WriteLine("no g++ here: no native ratio");
            return;
        }

        var p = new BareProblem(8192, 10_000, 15);
        var blocks = BareLayout.Of(p, BareLoop.Group);
        Against(p, blocks, native, withOffset: true, "scenario-native-offset");
        Against(p, blocks, native, withOffset: false, "scenario-native");
    }

    private static void Against(BareProblem p, BareLayout[] blocks, NativeScenario native, bool withOffset, string name)
    {
        var (ours, theirs) = (new BareResult(p), new BareResult(p));
        void Vectors() => BareLoop.Run(p, blocks, ours, withOffset, Environment.ProcessorCount);
        void Native() => native.Run(p, theirs, withOffset);
        Vectors();
        Native();
        ours.MustBe(theirs, name);
        var rate = Paired.Rate(p.OptionMonths, Native, Vectors);
        Console.WriteLine(FormattableString.Invariant($"{p.Options} options x {p.Paths} paths x {p.Seasons} seasons, {(withOffset ? 36 : 12)} terms; option-months a second: C++ {rate.Reference:0.00e0}, vectors {rate.Measured:0.00e0}"));
        Console.WriteLine(FormattableString.Invariant($"RATIO {name} {rate.Measured / rate.Reference:0.000}"));
    }

    private static void RunPlain()
    {
        var p = new BareProblem(64, 2_560, 15);
        var blocks = BareLayout.Of(p, BareLoop.Group);
        var (ours, plain) = (new BareResult(p), new BareResult(p));
        void Vectors() => BareLoop.Run(p, blocks, ours, false, 1);
        void Plain() => PlainScenario.Run(p, plain);
        Vectors();
        Plain();
        ours.MustBe(plain, "scenario-plain");
        var rate = Paired.Rate(p.OptionMonths, Plain, Vectors);
        Console.WriteLine(FormattableString.Invariant($"{p.Options} options x {p.Paths} paths x {p.Seasons} seasons on one thread; option-months a second: scalar C# {rate.Reference:0.00e0}, vectors {rate.Measured:0.00e0}"));
        Console.WriteLine(FormattableString.Invariant($"RATIO scenario-plain {rate.Measured / rate.Reference:0.000}"));
    }

    /// <summary>NumPy option by option, and with a matrix product a winter; medians of five pairs after one to warm up.</summary>
    private static void RunNumpy()
    {
        var p = new BareProblem(256, 10_000, 15);
        using var numpy = NumpyScenario.Start(p);
        if (numpy is null)
        {
            Console.WriteLine("no NumPy here: no ratio to it");
            return;
        }

        var blocks = BareLayout.Of(p, BareLoop.Group);
        var (ours, theirs) = (new BareResult(p), new BareResult(p));
        foreach (var (way, name) in new[] { ("options", "scenario-numpy"), ("products", "scenario-numpy-products") })
        {
            var pairs = Enumerable.Range(-1, 6).Select(_ => (Numpy: numpy.Run(way, theirs), Vectors: Paired.Seconds(() => BareLoop.Run(p, blocks, ours, false, Environment.ProcessorCount)))).Skip(1).ToList();
            ours.MustBe(theirs, name);
            var (reference, measured) = (p.OptionMonths / pairs.Select(t => t.Numpy).Order().ElementAt(2), p.OptionMonths / pairs.Select(t => t.Vectors).Order().ElementAt(2));
            Console.WriteLine(FormattableString.Invariant($"{p.Options} options x {p.Paths} paths x {p.Seasons} seasons, 12 terms; option-months a second: NumPy {reference:0.00e0}, vectors {measured:0.00e0}"));
            Console.WriteLine(FormattableString.Invariant($"RATIO {name} {measured / reference:0.000}"));
        }
    }

    private static void RunDraws()
    {
        var random = new Random(1);
        var (sink, normals) = (0.0, new double[Draws]);
        var rate = Paired.Rate(Draws, () =>
        {
            for (var i = 0; i < Draws; i++)
            {
                sink += Math.Sqrt(-2 * Math.Log(1 - random.NextDouble())) * Math.Cos(2 * Math.PI * random.NextDouble());
            }
        }, () =>
        {
            Noise.Normals(1, NoisePurpose.ShortFactor, 0, normals);
            sink += normals[^1];
        });
        Console.WriteLine(FormattableString.Invariant($"normal draws a second: in order {rate.Reference:0.0e0}, by counter {rate.Measured:0.0e0} (sum {sink:0.0})"));
        Console.WriteLine(FormattableString.Invariant($"RATIO draws-plain {rate.Measured / rate.Reference:0.000}"));
    }
}
