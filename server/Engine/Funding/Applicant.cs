namespace FarmPortfolio.Engine.Funding;

/// <summary>Whether a house has shown what a test asks.</summary>
/// <param name="Test">The test, in the words of the rules.</param>
/// <param name="Passed">Whether it holds.</param>
/// <param name="Evidence">What shows it: "permit 114, seen".</param>
/// <param name="On">Day it was looked at.</param>
public sealed record ShownTest(string Test, bool Passed, string? Evidence, DateOnly? On);

/// <summary>What is known of the application for a house.</summary>
/// <param name="HouseId">House.</param>
/// <param name="CompleteOn">Day it was complete; null = not told.</param>
/// <param name="OtherGrantsUsd">Other public money for the same work, US dollars.</param>
/// <param name="Shown">Tests looked at.</param>
public sealed record Application(string HouseId, DateOnly? CompleteOn, double OtherGrantsUsd, IReadOnlyList<ShownTest> Shown);

/// <summary>Who stands behind a house when money is given.</summary>
/// <param name="FarmId">Farm.</param>
/// <param name="RelatedKey">Key of the farms whose caps count as one.</param>
public sealed record Applicant(string FarmId, string RelatedKey)
{
    /// <summary>Groups that the farm claims.</summary>
    public IReadOnlyList<string> Groups { get; init; } = [];

    /// <summary>Since when it is a member; null = not told.</summary>
    public DateOnly? MemberSinceOn { get; init; }

    /// <summary>Grants that the related farms had in the years looked back on, US dollars.</summary>
    public double EarlierGrantsUsd { get; init; }

    /// <summary>The application; null = none is on file.</summary>
    public Application? Application { get; init; }
}
