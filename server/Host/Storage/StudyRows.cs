namespace FarmPortfolio.Host.Storage;

/// <summary>A study as it is listed.</summary>
public sealed record StudyRow
{
    /// <summary>Identifier.</summary>
    public string Id { get; init; } = string.Empty;

    /// <summary>Co-op.</summary>
    public string CoopId { get; init; } = string.Empty;

    /// <summary>Number within the co-op.</summary>
    public long Number { get; init; }

    /// <summary>queued, running, done, failed, cancelled.</summary>
    public string State { get; init; } = string.Empty;

    /// <summary>Who asked.</summary>
    public string AskedBy { get; init; } = string.Empty;

    /// <summary>When.</summary>
    public string AskedUtc { get; init; } = string.Empty;

    /// <summary>When it ended.</summary>
    public string? DoneUtc { get; init; }

    /// <summary>Seconds it took.</summary>
    public double? Seconds { get; init; }

    /// <summary>Hash of its inputs.</summary>
    public string InputSha256 { get; init; } = string.Empty;

    /// <summary>Name of its futures.</summary>
    public string? FuturesSha256 { get; init; }

    /// <summary>Hash of its results.</summary>
    public string? ResultSha256 { get; init; }

    /// <summary>Version of the numbers.</summary>
    public long NumbersVersion { get; init; }

    /// <summary>Version of the program.</summary>
    public string ProgramVersion { get; init; } = string.Empty;

    /// <summary>Why it failed.</summary>
    public string? Failure { get; init; }
}

/// <summary>An option of a study as it is listed.</summary>
public sealed record StudyOptionRow
{
    /// <summary>House and key.</summary>
    public string OptionId { get; init; } = string.Empty;

    /// <summary>House.</summary>
    public string HouseId { get; init; } = string.Empty;

    /// <summary>Key of the option.</summary>
    public string Key { get; init; } = string.Empty;

    /// <summary>Net present value of the middle future, US dollars.</summary>
    public double WorthUsd { get; init; }
}
