using FarmPortfolio.Benchmarks;

switch (args.FirstOrDefault())
{
    case "heat":
        HeatBenchmark.Run();
        return 0;
    case "scenario":
        ScenarioBenchmark.Run();
        return 0;
    case "study":
        StudyBenchmark.Run(args.Skip(1));
        return 0;
    default:
        Console.Error.WriteLine("dotnet run -c Release --project tests/Benchmarks -- heat|scenario|study");
        return 2;
}
