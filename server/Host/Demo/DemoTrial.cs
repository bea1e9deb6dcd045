using FarmPortfolio.Engine;
using FarmPortfolio.Engine.Farms;
using FarmPortfolio.Engine.HeatDemand;
using FarmPortfolio.Engine.Retrofits;
using FarmPortfolio.Engine.Scenarios;
using FarmPortfolio.Engine.Trials;
using FarmPortfolio.Engine.Units;
using FarmPortfolio.Engine.Weather;
using FarmPortfolio.Host.Accounts;
using FarmPortfolio.Host.Storage;
using FarmPortfolio.Host.Storage.Items;

namespace FarmPortfolio.Host.Demo;

/// <summary>An invented trial of three houses over a winter, in an invented place: one as it stands, one with a curtain, one with foam.</summary>
internal static class DemoTrial
{
    private const int Season = 2024;
    private const int Nights = 156;
    private const long Seed = 41;
    private static readonly DateTime Start = new(2024, 11, 1, 8, 0, 0, DateTimeKind.Unspecified);
    private static readonly (string Label, string? Retrofit, double Factor, double Unlike)[] Houses = [("A", null, 0, 1), ("B", "curtain", 1.04, 1.05), ("C", "foam", 0.90, 0.97)];

    /// <summary>The trial and what it shows.</summary>
    /// <param name="year">The winter at the trial's station.</param>
    /// <param name="stationId">That station.</param>
    /// <param name="blobs">Blobs.</param>
    /// <returns>Items to save.</returns>
    public static IEnumerable<ItemToSave> Items(WeatherYear year, string stationId, BlobStore blobs)
    {
        var facts = new HouseFacts
        {
            FarmId = "trial",
            DrawKey = Noise.Key("demo trial"),
            Shape = HouseShape.Hoop,
            WidthM = 30 * Us.FootM,
            LengthM = 96 * Us.FootM,
            Surfaces = [new(SurfacePart.Roof, "doublefilm", new DateOnly(2024, 9, 1))],
            HeatingPeriods = [new(new(10, 15), new(4, 30), Us.C(60), Us.C(65))],
            Heaters = [new("power", FuelKind.NaturalGas)],
        };
        var model = HouseModels.Of(facts, Catalogue.BuiltIn, new(), Season, FuelKind.NaturalGas).Model!;
        var readings = Readings(model, year);
        var kwh = HeatingValues.KwhPerUnit(FuelKind.NaturalGas, "therm")!.Value;
        var trial = new TrialFacts
        {
            WeatherStationId = stationId,
            StartsOn = DateOnly.FromDateTime(Start),
            EndsOn = DateOnly.FromDateTime(Start.AddDays(Nights)),
            ReadingsSha256 = blobs.Save(Viewer.Program, TrialReadings.Pack(readings)),
            Houses = [.. Houses.Select(h => new TrialHouse { Label = h.Label, Role = h.Retrofit is null ? TrialRole.Control : TrialRole.Treated, RetrofitCode = h.Retrofit, House = facts, Fuel = FuelKind.NaturalGas, Measure = TrialMeasure.Meter, KwhPerUnit = kwh })],
        };
        yield return new(ItemKind.Trial, "tr_demo", null, trial, new("Three houses, one winter", "Hollin Trial Ground, near Upper Bracken", "an invented trial"));
        foreach (var c in TrialAnalysis.Of(trial, readings, new Dictionary<int, WeatherYear> { [Season] = year }, Catalogue.BuiltIn, new()).Comparisons)
        {
            yield return new(ItemKind.Evidence, $"ev_demo_{c.RetrofitCode}", null, EvidenceFacts.Of(c, "tr_demo")!, new("Three houses, one winter, Hollin Trial Ground", Note: "an invented trial"));
        }

        const string rests = "the catalogue's figure rests on it already";
        yield return Published("foam", 0.97, 0.12, "SARE LNE10-299 final report (Parker, University of Vermont): 27 to 43 % over three winters, supervised", rests);
        yield return Published("curtain", 1.1, 0.12, "SARE LNE10-299 final report (Parker, University of Vermont): 25 to 31 % over three winters", rests);
        yield return Published("irfilm", 0.80, 0.20, "Bartok, \"Energy audits identify potential savings\": 12 % on average of 100 audits", rests);
    }

    private static ItemToSave Published(string code, double mean, double sd, string source, string reason) =>
        new(ItemKind.Evidence, $"ev_demo_read_{code}", null, new EvidenceFacts { RetrofitCode = code, Kind = EvidenceKind.Published, FactorMean = mean, FactorSd = sd, Counted = false, SetAsideReason = reason }, new(source));

    private static List<TrialReading> Readings(HouseModel model, WeatherYear year)
    {
        var hours = Houses.Select(h => HourlyHeat.Season(h.Retrofit is null ? OptionModels.AsItStands(model) : OptionModels.Of(model, new("trial", [h.Retrofit])).Model!, year)).ToArray();
        var first = 24 * SeasonCalendar.DayIndex(DateOnly.FromDateTime(Start)) + Start.Hour;
        double Night(double[] of, int n) => of.AsSpan(first + 24 * n, 24).ToArray().Average();
        var (meters, own) = (new[] { 1204.0, 877.2, 3318.6 }, new double[3]);
        var readings = new List<TrialReading>();
        for (var n = -1; n < Nights; n++)
        {
            for (var i = 0; i < 3; i++)
            {
                var (inside, outside, state) = (Us.C(60.6 + 0.5 * i), n < 0 ? 5 : Night(year.TempC, n), RetrofitState.Idle);
                if (n >= 0)
                {
                    own[i] = 0.5 * own[i] + 0.05 * Noise.Normal(Seed, NoisePurpose.LossOwn, i, n, 0);
                    var wind = 0.07 * Noise.Normal(Seed, NoisePurpose.LossGroup, 0, n, 0);
                    state = Houses[i].Retrofit is null || n % 18 < 6 ? RetrofitState.Idle : n is 52 or 53 or 88 && i == 2 ? RetrofitState.Broken : RetrofitState.InUse;
                    var (stands, with) = (Night(hours[0], n), Night(hours[i], n));
                    var heatW = (state == RetrofitState.InUse ? stands - Houses[i].Factor * (stands - with) : stands) * Houses[i].Unlike * (1 + wind) * (1 + own[i]) * (1 + 0.28 * i / Math.Max(4, Us.C(60) - outside));
                    meters[i] += heatW * 24 / 1000 / model.Heaters[0].Efficiency / HeatingValues.KwhPerUnit(FuelKind.NaturalGas, "therm")!.Value;
                }

                if (!(n is 24 or 25 or 71 && i == 0))
                {
                    readings.Add(new(i, Start.AddDays(n + 1), Math.Round(meters[i], 1), Math.Round(inside, 2), Math.Round(outside, 2), Us.C(60), state));
                }
            }
        }

        return readings;
    }
}
