namespace FarmPortfolio.Host.Accounts;

/// <summary>What a viewer is to a co-op.</summary>
public enum ViewerRole
{
    /// <summary>The program itself: start-up, shared records.</summary>
    Program,

    /// <summary>Whoever sits at a machine without accounts: all rights.</summary>
    Local,

    /// <summary>Keeps a co-op's register.</summary>
    Manager,

    /// <summary>A member, limited to the farms named.</summary>
    Grower,

    /// <summary>Reads what farms consent to.</summary>
    Lender,
}

/// <summary>
/// Who asks; the first argument of every store method. What it may see is turned by <see cref="Policy"/> into one SQL condition and one mask of fields, so a store never asks for a role.
/// </summary>
/// <param name="AccountId">Account.</param>
/// <param name="Name">Name shown in histories.</param>
/// <param name="Role">Role.</param>
/// <param name="CoopIds">Co-ops the viewer belongs to; null = all.</param>
/// <param name="FarmIds">Farms the viewer is limited to; null = all of its co-ops.</param>
public sealed record Viewer(string AccountId, string Name, ViewerRole Role, IReadOnlyList<string>? CoopIds = null, IReadOnlyList<string>? FarmIds = null)
{
    /// <summary>Start-up and other work of the program itself.</summary>
    public static Viewer Program { get; } = new("program", "the program", ViewerRole.Program);

    /// <summary>Whoever sits at a machine without accounts: all rights.</summary>
    public static Viewer Local { get; } = new("local", "this machine", ViewerRole.Local);
}
