namespace FarmPortfolio.Host.Accounts;

/// <summary>Who asks; the first argument of every store call, so that rules of access become a policy and not a rewrite.</summary>
/// <param name="AccountId">Account.</param>
/// <param name="Name">Name shown in histories.</param>
public sealed record Viewer(string AccountId, string Name)
{
    /// <summary>Start-up and other work of the program itself.</summary>
    public static Viewer Program { get; } = new("program", "the program");

    /// <summary>Whoever sits at a machine without accounts: all rights.</summary>
    public static Viewer Local { get; } = new("local", "this machine");

    /// <summary>Whether the viewer may read and write a co-op.</summary>
    /// <param name="coopId">Co-op.</param>
    /// <returns>True: both viewers of a machine without accounts may.</returns>
    public bool May(string coopId) => coopId.Length > 0;
}
