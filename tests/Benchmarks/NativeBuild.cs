using System.Diagnostics;
using System.Runtime.InteropServices;

namespace FarmPortfolio.Benchmarks;

/// <summary>A C++ source of Reference built as a library in a temporary folder, gone afterwards.</summary>
internal sealed class NativeBuild : IDisposable
{
    private readonly string folder;
    private readonly nint library;

    private NativeBuild(string folder, nint library) => (this.folder, this.library) = (folder, library);

    /// <summary>Removes the file. The library itself stays loaded: threads of its OpenMP pool still stand in its code, and would fall when it went.</summary>
    public void Dispose() => Directory.Delete(folder, true);

    /// <summary>Builds it; null where there is no g++ or it refuses.</summary>
    public static NativeBuild? Of(string source, params string[] flags)
    {
        var folder = Directory.CreateTempSubdirectory("reference").FullName;
        var file = Path.Combine(folder, source + ".so");
        try
        {
            using var compiler = Process.Start(new ProcessStartInfo("g++", ["-O3", "-march=native", .. flags, "-shared", "-fPIC", "-o", file, Path.Combine(AppContext.BaseDirectory, "Reference", source + ".cpp")]));
            compiler!.WaitForExit();
            if (compiler.ExitCode == 0)
            {
                return new(folder, NativeLibrary.Load(file));
            }
        }
        catch (System.ComponentModel.Win32Exception)
        {
            // no compiler here: the ratio is left out and said to be
        }

        Directory.Delete(folder, true);
        return null;
    }

    public nint Export(string name) => NativeLibrary.GetExport(library, name);
}
