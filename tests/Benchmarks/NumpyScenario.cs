using System.Diagnostics;
using System.Globalization;
using System.Runtime.InteropServices;
using System.Text.Json;

namespace FarmPortfolio.Benchmarks;

/// <summary>Reference/scenario.py: the bare problem in NumPy, in a process of its own that reckons it once each time it is told to.</summary>
internal sealed class NumpyScenario : IDisposable
{
    private static readonly string[] Interpreters = ["/usr/bin/python3", "python3"];

    private readonly string folder;
    private readonly Process python;

    private NumpyScenario(string folder, Process python) => (this.folder, this.python) = (folder, python);

    /// <summary>Starts it; null where no Python here has NumPy.</summary>
    public static NumpyScenario? Start(BareProblem p)
    {
        var interpreter = Interpreters.FirstOrDefault(HasNumpy);
        if (interpreter is null)
        {
            return null;
        }

        var folder = Directory.CreateTempSubdirectory("reference").FullName;
        var sizes = new { options = p.Options, paths = p.Paths, seasons = p.Seasons, winters = BareProblem.Winters };
        File.WriteAllText(Path.Combine(folder, "sizes.json"), JsonSerializer.Serialize(sizes));
        foreach (var (name, values) in new[] { ("load", p.Load), ("price", p.Price), ("outlay", p.Outlay), ("discount", p.Discount) })
        {
            File.WriteAllBytes(Path.Combine(folder, name), MemoryMarshal.AsBytes(values.AsSpan()));
        }

        File.WriteAllBytes(Path.Combine(folder, "winter"), p.Winter);
        var start = Command(interpreter, Path.Combine(AppContext.BaseDirectory, "Reference", "scenario.py"), folder);
        (start.RedirectStandardInput, start.RedirectStandardOutput) = (true, true);
        return new(folder, Process.Start(start)!);
    }

    /// <summary>Reckons all options once.</summary>
    /// <param name="way">"options" = one option after the other; "products" = a matrix product a winter.</param>
    /// <param name="result">Filled.</param>
    /// <returns>Seconds by its own clock.</returns>
    /// <exception cref="InvalidOperationException">It ended; what it said stands on the console.</exception>
    public double Run(string way, BareResult result)
    {
        python.StandardInput.WriteLine(way);
        python.StandardInput.Flush();
        var seconds = python.StandardOutput.ReadLine() ?? throw new InvalidOperationException("scenario.py ended before it answered");
        File.ReadAllBytes(Path.Combine(folder, "present")).CopyTo(MemoryMarshal.AsBytes(result.PresentUsd.AsSpan()));
        File.ReadAllBytes(Path.Combine(folder, "counts")).CopyTo(MemoryMarshal.AsBytes(result.Counts.AsSpan()));
        return double.Parse(seconds, CultureInfo.InvariantCulture);
    }

    /// <summary>Ends it and removes its files.</summary>
    public void Dispose()
    {
        python.StandardInput.Close();
        python.WaitForExit();
        python.Dispose();
        Directory.Delete(folder, true);
    }

    private static bool HasNumpy(string interpreter)
    {
        try
        {
            var start = Command(interpreter, "-c", "import numpy");
            start.RedirectStandardError = true;
            using var process = Process.Start(start)!;
            process.StandardError.ReadToEnd();
            process.WaitForExit();
            return process.ExitCode == 0;
        }
        catch (System.ComponentModel.Win32Exception)
        {
            // no such interpreter
            return false;
        }
    }

    /// <summary>A command with the kernels that NumPy's linear algebra would choose by itself.</summary>
    private static ProcessStartInfo Command(string file, params string[] arguments)
    {
        var start = new ProcessStartInfo(file, arguments);
        start.Environment.Remove("OPENBLAS_CORETYPE");
        start.Environment.Remove("OPENBLAS_L2_SIZE");
        return start;
    }
}
