using System.Formats.Tar;
using System.IO.Compression;
using System.Reflection;

namespace FarmPortfolio.BrowserTests;

/// <summary>Finds a Chromium: the variable CHROMIUM, an installed one, or the one packed in the web folder's packages, unpacked once.</summary>
internal static class ChromiumFiles
{
    private static readonly string[] Installed = ["/usr/bin/chromium", "/usr/bin/chromium-browser", "/usr/bin/google-chrome"];

    public static (string Path, Dictionary<string, string> Environment) Find()
    {
        if (Environment.GetEnvironmentVariable("CHROMIUM") is { Length: > 0 } given)
        {
            return File.Exists(given) ? (given, []) : throw new FileNotFoundException($"CHROMIUM names {given}, which is not there");
        }

        return Installed.FirstOrDefault(File.Exists) is { } installed ? (installed, []) : Unpacked();
    }

    private static (string Path, Dictionary<string, string> Environment) Unpacked()
    {
        var web = typeof(ChromiumFiles).Assembly.GetCustomAttributes<AssemblyMetadataAttribute>().First(a => a.Key == "WebFolder").Value!;
        var packed = Path.Combine(web, "node_modules", "@sparticuz", "chromium", "bin");
        if (!Directory.Exists(packed))
        {
            throw new DirectoryNotFoundException($"no Chromium: {packed} is missing. Build the host first, or set CHROMIUM to a browser's path.");
        }

        var target = Path.Combine(Path.GetTempPath(), "farm-portfolio-chromium-153");
        if (!Directory.Exists(target))
        {
            var scratch = target + "-" + Guid.NewGuid().ToString("N");
            Directory.CreateDirectory(scratch);
            var program = Path.Combine(scratch, "chromium");
            using (var from = new BrotliStream(File.OpenRead(Path.Combine(packed, "chromium.br")), CompressionMode.Decompress))
            using (var to = File.Create(program))
            {
                from.CopyTo(to);
            }

            if (!OperatingSystem.IsWindows())
            {
                File.SetUnixFileMode(program, UnixFileMode.UserRead | UnixFileMode.UserWrite | UnixFileMode.UserExecute);
            }

            foreach (var archive in Directory.EnumerateFiles(packed, "*.tar.br"))
            {
                using var tar = new BrotliStream(File.OpenRead(archive), CompressionMode.Decompress);
                TarFile.ExtractToDirectory(tar, scratch, overwriteFiles: true);
            }

            try
            {
                Directory.Move(scratch, target);
            }
            catch (IOException) when (Directory.Exists(target))
            {
                Directory.Delete(scratch, recursive: true);
            }
        }

        return (Path.Combine(target, "chromium"), new() { ["LD_LIBRARY_PATH"] = Path.Combine(target, "lib"), ["FONTCONFIG_PATH"] = Path.Combine(target, "fonts") });
    }
}
