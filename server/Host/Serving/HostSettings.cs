namespace FarmPortfolio.Host.Serving;

/// <summary>What can be set from outside, read once at start; docs/settings.md says the same in words.</summary>
/// <param name="Urls">Addresses to listen on, semicolons between; default <see cref="DefaultUrl"/>.</param>
/// <param name="StorageFolder">Folder of the database file; default farm-portfolio in the user's local data folder.</param>
/// <param name="DemoEnabled">Whether the invented co-op is filled in; default true.</param>
/// <param name="ImportMaxBytes">Largest file taken, bytes, from 1 kB up; default 256 MiB.</param>
/// <param name="AllowRemote">Whether other machines may reach the host, which has no sign-in; default false.</param>
/// <param name="HostNames">Names the host answers to beside the loopback ones; default none.</param>
public sealed record HostSettings(string Urls, string StorageFolder, bool DemoEnabled, long ImportMaxBytes, bool AllowRemote, IReadOnlyList<string> HostNames)
{
    /// <summary>Where the host listens unless told otherwise.</summary>
    public const string DefaultUrl = "http://localhost:5080";

    /// <summary>Largest file taken unless told otherwise: 256 MiB.</summary>
    public const long DefaultImportMaxBytes = 256L << 20;

    /// <summary>Reads the settings.</summary>
    /// <param name="configuration">Command line, environment and appsettings.json, in that order of weight.</param>
    /// <returns>The settings; or null and what is wrong with them, each fault naming its setting and what would be right.</returns>
    public static (HostSettings? Settings, IReadOnlyList<string> Faults) Read(IConfiguration configuration)
    {
        var faults = new List<string>();
        var settings = new HostSettings(
            Given(configuration, "urls") ?? DefaultUrl,
            Given(configuration, "Storage:Folder") ?? Path.Combine(Environment.GetFolderPath(Environment.SpecialFolder.LocalApplicationData, Environment.SpecialFolderOption.Create), "farm-portfolio"),
            Flag(configuration, "Demo:Enabled", true, faults),
            Bytes(configuration, "Import:MaxBytes", DefaultImportMaxBytes, faults),
            Flag(configuration, "Access:AllowRemote", false, faults),
            (Given(configuration, "Access:Hosts") ?? string.Empty).Split(';', StringSplitOptions.RemoveEmptyEntries | StringSplitOptions.TrimEntries));
        return faults.Count == 0 ? (settings, []) : (null, faults);
    }

    private static string? Given(IConfiguration configuration, string name) => configuration[name] is { } text && !string.IsNullOrWhiteSpace(text) ? text.Trim() : null;

    private static bool Flag(IConfiguration configuration, string name, bool otherwise, List<string> faults)
    {
        if (Given(configuration, name) is not { } text)
        {
            return otherwise;
        }

        if (!bool.TryParse(text, out var value))
        {
            faults.Add($"{name} is \"{text}\". It must be true or false.");
        }

        return value;
    }

    private static long Bytes(IConfiguration configuration, string name, long otherwise, List<string> faults)
    {
        if (Given(configuration, name) is not { } text)
        {
            return otherwise;
        }

        if (!long.TryParse(text, System.Globalization.NumberStyles.None, System.Globalization.CultureInfo.InvariantCulture, out var value) || value < 1024)
        {
            faults.Add($"{name} is \"{text}\". It must be a whole number of bytes, 1024 or more.");
        }

        return value;
    }
}
