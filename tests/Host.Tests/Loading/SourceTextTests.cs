using System.Text;
using FarmPortfolio.Host.Loading;

namespace FarmPortfolio.Host.Tests.Loading;

/// <summary>A huge, endless or foreign file is given up early, and never held in memory.</summary>
[Collection(AloneTests.Name)]
public class SourceTextTests
{
    private const string Garbage = "garbage,more garbage,yet more\n";

    [Fact]
    public void A_file_over_the_limit_is_refused_by_its_length_alone()
    {
        using var stream = new Endless("DATE,TMAX (F),TMIN (F)\n", "2024-01-01,40,30\n", 300L << 20);
        using var text = SourceText.Open(stream, "huge.csv", 256L << 20);
        var loaded = WeatherFile.Read(text);
        Assert.Null(loaded.Value);
        var fault = Assert.Single(loaded.Faults);
        Assert.Equal("TOO_LARGE", fault.Code);
        Assert.Contains("256 MiB", fault.Message, StringComparison.Ordinal);
        Assert.Equal(0, stream.Position);
    }

    [Theory]
    [InlineData(true)]
    [InlineData(false)]
    public void Garbage_without_a_head_is_given_up_after_64_kB(bool weather)
    {
        using var stream = new Endless(string.Empty, Garbage, 200L << 20);
        using var text = SourceText.Open(stream, "garbage.csv", 256L << 20);
        var faults = weather ? WeatherFile.Read(text).Faults : MonthlyPrices.Read(text).Faults;
        Assert.Equal("NO_HEAD", Assert.Single(faults).Code);
        Assert.InRange(stream.Position, 1, 128 * 1024);
    }

    [Fact]
    public void A_million_bad_rows_leave_a_thousand_faults_and_a_count()
    {
        using var stream = new Endless("DATE,TMAX (F),TMIN (F)\n", Garbage, 30L << 20);
        using var text = SourceText.Open(stream, "bad.csv", 256L << 20);
        var before = GC.GetTotalMemory(forceFullCollection: true);
        var loaded = WeatherFile.Read(text);
        var kept = GC.GetTotalMemory(forceFullCollection: true) - before;
        Assert.Null(loaded.Value);
        Assert.InRange(loaded.Rows, 1_000_000, 1_100_000);
        Assert.Equal(1001, loaded.Faults.Count);
        Assert.Equal("MORE", loaded.Faults[^1].Code);
        Assert.True(kept < 4 << 20, $"{kept:#,0} bytes are held after the reading");
    }

    [Fact]
    public void A_line_without_end_is_given_up()
    {
        using var stream = new Endless("DATE,TMAX (F),TMIN (F)\n2024-01-01,40,30\n", "2024-01-02,", 200L << 20);
        using var text = SourceText.Open(stream, "line.csv", 256L << 20);
        var loaded = WeatherFile.Read(text);
        Assert.Contains(loaded.Faults, f => f is { Code: "LINE_TOO_LONG", Line: 3 });
        Assert.InRange(stream.Position, 1, 512 * 1024);
    }

    [Fact]
    public void The_reading_tells_its_progress_and_stops_when_told()
    {
        using var stop = new CancellationTokenSource();
        using var stream = new Endless("DATE,TMAX (F),TMIN (F)\n", "2024-01-01,40,30\n", 64L << 20);
        var share = 0.0;
        using var text = SourceText.Open(stream, "long.csv", 256L << 20, new Told(s =>
        {
            share = s;
            if (s > 0.1)
            {
                stop.Cancel();
            }
        }), stop.Token);
        Assert.Throws<OperationCanceledException>(() => WeatherFile.Read(text));
        Assert.InRange(share, 0.1, 0.11);
    }

    [Fact]
    public void A_head_may_come_after_many_lines_but_within_64_kB()
    {
        var text = string.Concat(Enumerable.Repeat("a line of an introduction\n", 2000)) + "DATE,TMAX (F),TMIN (F)\n2024-01-01,40,30\n";
        using var reader = new StringReader(text);
        var loaded = WeatherFile.Read(reader, "late.csv");
        Assert.Empty(loaded.Faults);
        Assert.Equal(1, loaded.Value!.Days);
    }

    private sealed class Told(Action<double> tell) : IProgress<double>
    {
        public void Report(double value) => tell(value);
    }

    /// <summary>A file that is made while it is read: a beginning, and one piece again and again up to a length.</summary>
    private sealed class Endless(string beginning, string piece, long length) : Stream
    {
        private readonly byte[] beginning = Encoding.UTF8.GetBytes(beginning);
        private readonly byte[] piece = Encoding.UTF8.GetBytes(piece);

        public override bool CanRead => true;

        public override bool CanSeek => true;

        public override bool CanWrite => false;

        public override long Length => length;

        public override long Position { get; set; }

        public override int Read(byte[] buffer, int offset, int count)
        {
            var read = (int)Math.Min(count, length - Position);
            for (var i = 0; i < read; i++, Position++)
            {
                buffer[offset + i] = Position < beginning.Length ? beginning[Position] : piece[(Position - beginning.Length) % piece.Length];
            }

            return read;
        }

        public override void Flush()
        {
        }

        public override long Seek(long offset, SeekOrigin origin) => throw new NotSupportedException();

        public override void SetLength(long value) => throw new NotSupportedException();

        public override void Write(byte[] buffer, int offset, int count) => throw new NotSupportedException();
    }
}
