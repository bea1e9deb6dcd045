using FarmPortfolio.Engine.Scenarios;

namespace FarmPortfolio.Published;

/// <summary>Known answers of Philox4x32-10: Random123, tests/kat_vectors (D. E. Shaw Research). Exact.</summary>
public class PhiloxTests
{
    public static TheoryData<uint[], uint[], uint[]> Known => new()
    {
        { [0, 0, 0, 0], [0, 0], [0x6627e8d5, 0xe169c58d, 0xbc57ac4c, 0x9b00dbd8] },
        { [0xffffffff, 0xffffffff, 0xffffffff, 0xffffffff], [0xffffffff, 0xffffffff], [0x408f276d, 0x41c83b0e, 0xa20bc7c6, 0x6d5451fd] },
        { [0x243f6a88, 0x85a308d3, 0x13198a2e, 0x03707344], [0xa4093822, 0x299f31d0], [0xd16cfe09, 0x94fdcceb, 0x5001e420, 0x24126ea1] },
    };

    [Theory, MemberData(nameof(Known))]
    public void Known_answers(uint[] counter, uint[] key, uint[] expected)
    {
        var words = Philox.Draw(new(counter[0], counter[1], counter[2], counter[3]), key[0], key[1]);
        uint[] actual = [words.A, words.B, words.C, words.D];
        Assert.Equal(expected, actual);
    }
}
