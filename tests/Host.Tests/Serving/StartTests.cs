using System.Diagnostics;
using System.Net;
using System.Net.Sockets;
using System.Text;

namespace FarmPortfolio.Host.Tests.Serving;

/// <summary>The program as a process of its own: what it says and with which code it ends.</summary>
public sealed class StartTests : IDisposable
{
    private readonly string folder = Directory.CreateTempSubdirectory("farm-portfolio-start-").FullName;

    [Fact]
    public async Task A_taken_port_is_told_with_the_way_out()
    {
        using var other = new TcpListener(IPAddress.Loopback, 0);
        other.Start();
        var (code, said) = await RunToEnd($"--urls=http://127.0.0.1:{((IPEndPoint)other.LocalEndpoint).Port}", "--Demo:Enabled=false");
        Assert.Equal(3, code);
        Assert.Contains("--urls", said, StringComparison.Ordinal);
        Assert.DoesNotContain("   at ", said, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("Access:AllowRemote=true", "--urls=http://0.0.0.0:5998")]
    [InlineData("Import:MaxBytes", "--Import:MaxBytes=lots")]
    [InlineData("\"nonsense\"", "--urls=nonsense")]
    public async Task What_cannot_be_is_told_and_nothing_is_made(string told, string argument)
    {
        var (code, said) = await RunToEnd(argument);
        Assert.Equal(2, code);
        Assert.Contains(told, said, StringComparison.Ordinal);
        Assert.Empty(Directory.EnumerateFileSystemEntries(folder));
    }

    [Fact]
    public async Task It_says_where_it_serves_answers_there_and_keeps_the_data_for_the_next_start()
    {
        Assert.Equal("ok", await Serve());
        var file = Assert.Single(Directory.EnumerateFiles(folder, "*.db"));
        var before = File.GetCreationTimeUtc(file);
        Assert.Equal("ok", await Serve());
        Assert.Equal(before, File.GetCreationTimeUtc(Assert.Single(Directory.EnumerateFiles(folder, "*.db"))));
    }

    public void Dispose() => Directory.Delete(folder, recursive: true);

    private async Task<string> Serve()
    {
        using var process = Start("--urls=http://127.0.0.1:0", "--Demo:Enabled=false");
        var errors = process.StandardError.ReadToEndAsync();
        try
        {
            using var enough = new CancellationTokenSource(TimeSpan.FromSeconds(180));
            while (await process.StandardOutput.ReadLineAsync(enough.Token) is { } line)
            {
                if (line.StartsWith("FarmPortfolio serves on http://127.0.0.1:", StringComparison.Ordinal))
                {
                    using var client = new HttpClient { BaseAddress = new Uri(line.Split(' ')[3]) };
                    return await client.GetStringAsync(new Uri("/health", UriKind.Relative));
                }
            }
        }
        finally
        {
            process.Kill();
            await process.WaitForExitAsync();
        }

        return "it ended without serving: " + await errors;
    }

    private async Task<(int Code, string Said)> RunToEnd(params string[] arguments)
    {
        using var process = Start(arguments);
        var said = new StringBuilder();
        process.OutputDataReceived += (_, e) => said.AppendLine(e.Data);
        process.BeginOutputReadLine();
        using var enough = new CancellationTokenSource(TimeSpan.FromSeconds(180));
        var errors = await process.StandardError.ReadToEndAsync(enough.Token);
        await process.WaitForExitAsync(enough.Token);
        return (process.ExitCode, errors + said);
    }

    private Process Start(params string[] arguments) => Process.Start(new ProcessStartInfo(
        Environment.ProcessPath is { } own && Path.GetFileNameWithoutExtension(own) == "dotnet" ? own : "dotnet",
        [Path.Combine(AppContext.BaseDirectory, "FarmPortfolio.Host.dll"), $"--Storage:Folder={folder}", .. arguments])
    {
        RedirectStandardOutput = true,
        RedirectStandardError = true,
        WorkingDirectory = folder,
    })!;
}
