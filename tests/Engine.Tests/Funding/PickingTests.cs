using FarmPortfolio.Engine.Funding;

namespace FarmPortfolio.Engine.Tests.Funding;

/// <summary>Steps that wait in order of merit are picked as if every option were looked at before each step.</summary>
public class PickingTests
{
    [Theory]
    [InlineData(1, 40, 9000)]
    [InlineData(2, 90, 60000)]
    [InlineData(3, 90, 200000)]
    [InlineData(4, 1, 500)]
    [InlineData(5, 0, 500)]
    public void It_picks_what_a_look_at_every_option_before_each_step_picks(int seed, int houses, double money)
    {
        var random = new Random(seed);
        for (var turn = 0; turn < 6; turn++)
        {
            // rounded, so that equal steps are met and the tie must be parted
            var candidates = Enumerable.Range(0, houses * 8).Select(i => new Candidate(
                i, $"h{i / 8}", $"f{i / 40}", 100.0 * random.Next(1, 60), Math.Round(random.NextDouble() * 1200 - 100, 0), random.Next(40) == 0)).ToList();
            var rules = new FundingRules { FarmCapUsd = 14000 };
            var expected = OneByOne(candidates, rules.FarmCapUsd, money);
            var found = Picking.Chosen(candidates, rules, money, c => c.Merit);
            Assert.Equal(expected.Select(c => c.Index), found.Select(c => c.Index));
        }
    }

    private static List<Candidate> OneByOne(List<Candidate> candidates, double farmCap, double money)
    {
        var chosen = new List<Candidate>();
        void Take(Candidate c)
        {
            var at = chosen.FindIndex(x => x.House == c.House);
            money -= c.Grant - (at < 0 ? 0 : chosen[at].Grant);
            if (at < 0)
            {
                chosen.Add(c);
            }
            else
            {
                chosen[at] = c;
            }
        }

        foreach (var c in candidates.Where(c => c.Pinned))
        {
            if (c.Grant <= money && c.Grant + chosen.Where(x => x.Farm == c.Farm).Sum(x => x.Grant) <= farmCap && chosen.All(x => x.House != c.House))
            {
                Take(c);
            }
        }

        while (true)
        {
            (Candidate? Option, double Ratio) best = (null, 0);
            foreach (var c in candidates)
            {
                var old = chosen.Find(x => x.House == c.House);
                var (more, grant) = (c.Merit - (old?.Merit ?? 0), c.Grant - (old?.Grant ?? 0));
                var farm = chosen.Where(x => x.Farm == c.Farm).Sum(x => x.Grant);
                if (old?.Pinned != true && more > 0 && grant > 0 && grant <= money && farm + grant <= farmCap && Candidate.Tied(more / grant) is var ratio
                    && (ratio > best.Ratio || (best.Option is not null && ratio == best.Ratio && c.Before(best.Option))))
                {
                    best = (c, ratio);
                }
            }

            if (best.Option is not { } next)
            {
                return chosen;
            }

            Take(next);
        }
    }
}
