namespace FarmPortfolio.Engine.Funding;

/// <summary>How late a step is.</summary>
/// <param name="Milestone">The first step not done.</param>
/// <param name="DaysLate">Days since it was due.</param>
/// <param name="MayReturn">Whether the money may return to the waiting list.</param>
public sealed record Overdue(Milestone Milestone, int DaysLate, bool MayReturn);

/// <summary>When the steps of an award are due, and which are late. Days are common practice, no source.</summary>
public static class Milestones
{
    /// <summary>Days late from which a step is on the list.</summary>
    public const int WarnDays = 30;

    /// <summary>Days late from which the money may return.</summary>
    public const int ReturnDays = 60;

    private const int HeatingMonth = 10;
    private const int LeastDays = 90;

    /// <summary>Steps of an award, with the days they are due.</summary>
    /// <param name="awardedOn">Day it was given.</param>
    /// <returns>Steps in order.</returns>
    public static IReadOnlyList<Milestone> Of(DateOnly awardedOn)
    {
        // installed before the next heating season that leaves time for the work
        var season = new DateOnly(awardedOn.Year, HeatingMonth, 1);
        var installed = season >= awardedOn.AddDays(LeastDays) ? season : season.AddYears(1);
        return
        [
            new(MilestoneKind.Accepted, awardedOn.AddDays(30)),
            new(MilestoneKind.Ordered, awardedOn.AddDays(60)),
            new(MilestoneKind.Installed, installed),
            new(MilestoneKind.Inspected, installed.AddDays(30)),
            new(MilestoneKind.Invoiced, installed.AddDays(60)),
            new(MilestoneKind.Paid, installed.AddDays(90)),
            new(MilestoneKind.Reported, new(installed.Year + 1, 7, 31)),
        ];
    }

    /// <summary>The step that an award is late with.</summary>
    /// <param name="award">Award.</param>
    /// <param name="today">Day.</param>
    /// <returns>The first step not done that is 30 days late; null = none, the money went back, or the award was entered by hand: what its papers do not tell is not late.</returns>
    public static Overdue? Late(AwardFacts award, DateOnly today) =>
        award is { DecisionId: not null, ReturnedOn: null } && award.Milestones.FirstOrDefault(m => m.DoneOn is null) is { } next && today.DayNumber - next.DueOn.DayNumber is var days && days >= WarnDays
            ? new(next, days, days >= ReturnDays && award.PaidCents == 0)
            : null;
}
