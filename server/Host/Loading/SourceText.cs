using System.Globalization;
using FarmPortfolio.Engine;

namespace FarmPortfolio.Host.Loading;

/// <summary>
/// The text of a file, read once from front to back in bounded memory. What is no text, has a line without end, is too long, or shows no head
/// within its first 64 kB simply ends there, and <see cref="Refusal"/> says why.
/// </summary>
public sealed class SourceText : TextReader
{
    /// <summary>Characters within which a head must stand, and the most that one line may have.</summary>
    public const int HeadChars = 64 * 1024;

    private readonly TextReader inner;
    private readonly Stream? stream;
    private readonly long mostBytes;
    private readonly IProgress<double>? progress;
    private readonly CancellationToken cancel;
    private readonly char[] buffered = new char[4096];
    private char[]? head;
    private int headUsed;
    private int headCount;
    private int lineChars;
    private int line = 1;
    private bool headFound;
    private int ahead;
    private int aheadCount;

    /// <summary>Over a text at hand.</summary>
    /// <param name="text">Text.</param>
    /// <param name="file">Name of the file, for the faults.</param>
    /// <param name="cancel">Stops the reading.</param>
    public SourceText(TextReader text, string file, CancellationToken cancel = default)
        : this(text, file, null, long.MaxValue, null, cancel)
    {
    }

    private SourceText(TextReader text, string file, Stream? stream, long mostBytes, IProgress<double>? progress, CancellationToken cancel) =>
        (inner, File, this.stream, this.mostBytes, this.progress, this.cancel) = (text, file, stream, mostBytes, progress, cancel);

    /// <summary>Name of the file.</summary>
    public string File { get; }

    /// <summary>Why the reading ended early; null = it did not.</summary>
    public Fault? Refusal { get; private set; }

    /// <summary>The first character that is no UTF-8, where there is one: names with it would be garbled. The reading goes on.</summary>
    public Fault? Garbled { get; private set; }

    /// <summary>The first characters, at most 64 kB; they are read again afterwards.</summary>
    public ReadOnlySpan<char> Head
    {
        get
        {
            if (head is null)
            {
                head = new char[HeadChars];
                int read;
                while (Refusal is null && headCount < HeadChars && (read = inner.Read(head, headCount, HeadChars - headCount)) > 0)
                {
                    headCount += read;
                }

                headUsed = headCount > 0 && head[0] == '\uFEFF' ? 1 : 0;
                LookAtHead();
            }

            return head.AsSpan(0, headCount);
        }
    }

    /// <summary>Over a file.</summary>
    /// <param name="stream">Its bytes; UTF-8, or UTF-16 with a byte-order mark.</param>
    /// <param name="file">Name of the file.</param>
    /// <param name="mostBytes">Longest file that is taken, bytes.</param>
    /// <param name="progress">Told the share read, 0 to 1; null = nobody.</param>
    /// <param name="cancel">Stops the reading.</param>
    /// <returns>The text; one that is too long is empty and says so.</returns>
    public static SourceText Open(Stream stream, string file, long mostBytes, IProgress<double>? progress = null, CancellationToken cancel = default)
    {
        var text = new SourceText(new StreamReader(stream, leaveOpen: true), file, stream, mostBytes, progress, cancel);
        if (stream.CanSeek && stream.Length > mostBytes)
        {
            text.Refusal = text.TooLong();
        }

        return text;
    }

    /// <summary>Told by a reader when the head is found: the text may go on past its first 64 kB.</summary>
    public void HeadFound() => headFound = true;

    /// <inheritdoc/>
    public override int Read(char[] buffer, int index, int count)
    {
        cancel.ThrowIfCancellationRequested();
        _ = Head;
        if (Refusal is not null)
        {
            return 0;
        }

        int read;
        if (headUsed < headCount)
        {
            read = Math.Min(count, headCount - headUsed);
            Array.Copy(head!, headUsed, buffer, index, read);
            headUsed += read;
        }
        else if (!headFound)
        {
            return 0;
        }
        else
        {
            read = inner.Read(buffer, index, count);
            if (stream is { CanSeek: true, Length: > 0 })
            {
                progress?.Report(Math.Min(1, stream.Position / (double)stream.Length));
                Refusal = stream.Position > mostBytes ? TooLong() : null;
            }
        }

        Refusal ??= Look(buffer.AsSpan(index, read));
        return Refusal is null ? read : 0;
    }

    /// <inheritdoc/>
    public override int Read() => ahead < aheadCount || Fill() ? buffered[ahead++] : -1;

    /// <summary>The next line without its end; null when there is none.</summary>
    /// <returns>The line.</returns>
    public override string? ReadLine()
    {
        var (whole, any) = (new System.Text.StringBuilder(), false);
        while (ahead < aheadCount || Fill())
        {
            any = true;
            var left = buffered.AsSpan(ahead, aheadCount - ahead);
            var end = left.IndexOf('\n');
            whole.Append(end < 0 ? left : left[..end]);
            ahead += end < 0 ? left.Length : end + 1;
            if (end >= 0)
            {
                break;
            }
        }

        return any ? whole.ToString().TrimEnd('\r') : null;
    }

    /// <inheritdoc/>
    protected override void Dispose(bool disposing)
    {
        if (disposing)
        {
            inner.Dispose();
        }

        base.Dispose(disposing);
    }

    private bool Fill()
    {
        (ahead, aheadCount) = (0, Read(buffered, 0, buffered.Length));
        return aheadCount > 0;
    }

    private void LookAtHead()
    {
        var first = head.AsSpan(headUsed, headCount - headUsed);
        if (Refusal is not null)
        {
            return;
        }

        if (first.StartsWith("PK\u0003\u0004"))
        {
            Refusal = new("WORKBOOK", null, "This is a workbook or another packed file, not text.", "Save the sheet as CSV (UTF-8) and import that.", File);
        }
        else if (first.Contains('\0'))
        {
            Refusal = new("NOT_TEXT", null, "This is not a text file.", "Give a CSV or text file, in UTF-8.", File, 1, 1);
        }
        else if (first.IsWhiteSpace())
        {
            Refusal = new("EMPTY", null, "The file is empty.", "Give a file with a head and rows.", File, 1, 1);
        }
    }

    private Fault? Look(ReadOnlySpan<char> read)
    {
        foreach (var c in read)
        {
            if (c == '\uFFFD' && Garbled is null)
            {
                Garbled = new("NOT_UTF8", null, $"Line {line} holds a character that is not in UTF-8; it is read as \uFFFD.", "Save the file as CSV UTF-8 and give it again; names would be kept garbled.", File, line, lineChars + 1);
            }

            if (c == '\n')
            {
                (lineChars, line) = (0, line + 1);
            }
            else if (++lineChars > HeadChars || c == '\0')
            {
                return c == '\0'
                    ? new("NOT_TEXT", null, $"Line {line} holds bytes that are no text.", "Save the file again as plain text; the rows before it were read.", File, line, lineChars)
                    : new("LINE_TOO_LONG", null, $"Line {line} does not end within 64 kB.", "Give one row a line; the rows before it were read.", File, line, 1);
            }
        }

        return null;
    }

    private Fault TooLong() => new(
        "TOO_LARGE", null, string.Create(CultureInfo.InvariantCulture, $"The file is longer than the {mostBytes / 1048576.0:#,0.##} MiB that are taken."),
        "Give the rows that matter, or raise the setting Import:MaxBytes.", File);
}
