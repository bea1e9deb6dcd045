using FarmPortfolio.Engine.Scenarios;

namespace FarmPortfolio.Published;

/// <summary>Known answers of Philox4x32 at ten rounds, as it is in use, and at seven: Random123, tests/kat_vectors (D. E. Shaw Research). Exact.</summary>
public class PhiloxTests
{
    public static TheoryData<uint[], uint[], uint[]> Known => new()
    {
        { [0, 0, 0, 0], [0, 0], [0x6627e8d5, 0xe169c58d, 0xbc57ac4c, 0x9b00dbd8] },
        { [0xffffffff, 0xffffffff, 0xffffffff, 0xffffffff], [0xffffffff, 0xffffffff], [0x408f276d, 0x41c83b0e, 0xa20bc7c6, 0x6d5451fd] },
        { [0x243f6a88, 0x85a308d3, 0x13198a2e, 0x03707344], [0xa4093822, 0x299f31d0], [0xd16cfe09, 0x94fdcceb, 0x5001e420, 0x24126ea1] },
    };

    public static TheoryData<uint[], uint[], uint[]> Seven => new()
    {
        { [0, 0, 0, 0], [0, 0], [0x5f6fb709, 0x0d893f64, 0x4f121f81, 0x4f730a48] },
        { [0xffffffff, 0xffffffff, 0xffffffff, 0xffffffff], [0xffffffff, 0xffffffff], [0x5207ddc2, 0x45165e59, 0x4d8ee751, 0x8c52f662] },
        { [0x243f6a88, 0x85a308d3, 0x13198a2e, 0x03707344], [0xa4093822, 0x299f31d0], [0x4dfccaba, 0x190a87f0, 0xc47362ba, 0xb6b5242a] },
    };

    [Theory, MemberData(nameof(Known))]
    public void Known_answers(uint[] counter, uint[] key, uint[] expected) => Holds(10, counter, key, expected);

    [Theory, MemberData(nameof(Seven))]
    public void Known_answers_of_seven_rounds(uint[] counter, uint[] key, uint[] expected) => Holds(7, counter, key, expected);

    private static void Holds(int rounds, uint[] counter, uint[] key, uint[] expected)
    {
        var words = rounds == 10 ? Philox.Draw(new(counter[0], counter[1], counter[2], counter[3]), key[0], key[1]) : Philox.Draw(new(counter[0], counter[1], counter[2], counter[3]), key[0], key[1], rounds);
        uint[] actual = [words.A, words.B, words.C, words.D];
        Assert.Equal(expected, actual);
    }
}
