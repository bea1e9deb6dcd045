using System.Net;
using System.Net.Sockets;

namespace FarmPortfolio.Host.Serving;

/// <summary>Where the host may listen. Without sign-in that is this machine alone, unless the user takes the risk by name.</summary>
public static class Listening
{
    /// <summary>Judges every address the host would listen on.</summary>
    /// <param name="configuration">Settings; addresses under Kestrel:Endpoints count too.</param>
    /// <param name="settings">Settings as read.</param>
    /// <returns>Why the host must not start, or null; and a warning to show if it does, or null.</returns>
    public static (string? Refusal, string? Warning) Judge(IConfiguration configuration, HostSettings settings)
    {
        var endpoints = configuration.GetSection("Kestrel:Endpoints").GetChildren().Select(e => e["Url"]).OfType<string>();
        var remote = new List<string>();
        foreach (var url in settings.Urls.Split(';', StringSplitOptions.RemoveEmptyEntries | StringSplitOptions.TrimEntries).Concat(endpoints))
        {
            try
            {
                if (!OnThisMachine(BindingAddress.Parse(url)))
                {
                    remote.Add(url);
                }
            }
            catch (FormatException)
            {
                return ($"\"{url}\" is no address to listen on. Give one like {HostSettings.DefaultUrl} by --urls.", null);
            }
        }

        if (remote.Count == 0)
        {
            return (null, null);
        }

        var where = string.Join(", ", remote);
        return settings.AllowRemote
            ? (null, $"Warning: other machines can reach {where}, and there is no sign-in: whoever reaches it reads and changes everything.")
            : ($"Other machines could reach {where}, and there is no sign-in. Listen on {HostSettings.DefaultUrl}, or take that risk with Access:AllowRemote=true.", null);
    }

    /// <summary>Looks whether a port is free, before anything is touched.</summary>
    /// <param name="settings">Settings; their addresses have been judged.</param>
    /// <returns>Which address is taken and what to do, or null.</returns>
    public static string? Taken(HostSettings settings)
    {
        foreach (var address in settings.Urls.Split(';', StringSplitOptions.RemoveEmptyEntries | StringSplitOptions.TrimEntries).Select(BindingAddress.Parse).Where(a => !a.IsUnixPipe && !a.IsNamedPipe && a.Port != 0))
        {
            foreach (var ip in IPAddress.TryParse(address.Host.Trim('[', ']'), out var given) ? [given] : new[] { IPAddress.Loopback, IPAddress.IPv6Loopback })
            {
                try
                {
                    using var probe = new TcpListener(ip, address.Port);
                    probe.Start();
                }
                catch (SocketException e) when (e.SocketErrorCode is SocketError.AddressAlreadyInUse or SocketError.AccessDenied)
                {
                    return e.SocketErrorCode == SocketError.AccessDenied
                        ? $"Port {address.Port} needs rights that this account lacks. Choose one above 1023 with --urls http://localhost:PORT."
                        : $"Port {address.Port} is taken, perhaps by this program already running. Stop what uses it, or choose another one with --urls http://localhost:PORT.";
                }
                catch (SocketException)
                {
                    // a machine without this kind of address; the server passes over it as well
                }
            }
        }

        return null;
    }

    /// <summary>Starts the host and says where it serves.</summary>
    /// <param name="app">The host.</param>
    public static void Serve(this WebApplication app)
    {
        app.Start();
        Console.WriteLine($"FarmPortfolio serves on {string.Join(", ", app.Urls)} (Ctrl+C stops it)");
        app.WaitForShutdown();
    }

    // a name that is neither localhost nor a loopback number makes the server listen on every network card
    private static bool OnThisMachine(BindingAddress address) =>
        address.IsUnixPipe || address.IsNamedPipe || string.Equals(address.Host, "localhost", StringComparison.OrdinalIgnoreCase) ||
        (IPAddress.TryParse(address.Host.Trim('[', ']'), out var ip) && IPAddress.IsLoopback(ip));
}
