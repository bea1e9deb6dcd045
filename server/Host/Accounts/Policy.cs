namespace FarmPortfolio.Host.Accounts;

/// <summary>What a farm lets others see; nothing unless it says so.</summary>
/// <param name="Bills">Its bills, to other members and lenders.</param>
/// <param name="Name">Its name beside its figures.</param>
/// <param name="Lender">Its sales and loans, to a lender.</param>
/// <param name="GivenOn">When it was given.</param>
public sealed record Consent(bool Bills = false, bool Name = false, bool Lender = false, DateOnly? GivenOn = null);

/// <summary>Turns a viewer into one SQL condition over co-op and farm.</summary>
public static class Policy
{
    /// <summary>Co-op of the records that ship with the program: read by all, written by the program alone.</summary>
    public const string Shared = "shared";

    /// <summary>Condition over the columns coop_id and farm_id of a row; its parameters are viewerCoops and viewerFarms.</summary>
    /// <param name="viewer">Who asks.</param>
    /// <param name="row">Name of the row.</param>
    /// <returns>SQL that is true for the rows the viewer may see.</returns>
    public static string Sees(Viewer viewer, string row)
    {
        var coop = viewer.CoopIds is null ? "1 = 1" : $"({row}.coop_id IN @viewerCoops OR {row}.coop_id = '{Shared}')";
        return viewer.FarmIds is null ? coop : $"{coop} AND ({row}.farm_id IS NULL OR {row}.farm_id IN @viewerFarms)";
    }

    /// <summary>Whether a viewer may read a co-op at all.</summary>
    /// <param name="viewer">Who asks.</param>
    /// <param name="coopId">Co-op.</param>
    /// <returns>Whether it may.</returns>
    public static bool MayRead(Viewer viewer, string coopId) => coopId == Shared || viewer.CoopIds is null || viewer.CoopIds.Contains(coopId);

    /// <summary>Whether a viewer may change a co-op's items; which farms' is the condition's matter.</summary>
    /// <param name="viewer">Who asks.</param>
    /// <param name="coopId">Co-op.</param>
    /// <returns>Whether it may.</returns>
    public static bool MayWrite(Viewer viewer, string coopId) =>
        viewer.Role != ViewerRole.Lender && (coopId == Shared ? viewer.Role == ViewerRole.Program : MayRead(viewer, coopId));

    /// <summary>Whether a viewer may change what belongs to a farm; null = to the whole co-op.</summary>
    /// <param name="viewer">Who asks.</param>
    /// <param name="farmId">Farm.</param>
    /// <returns>Whether it may.</returns>
    public static bool MayWriteFarm(Viewer viewer, string? farmId) => viewer.FarmIds is null || (farmId is not null && viewer.FarmIds.Contains(farmId));
}
