using FarmPortfolio.Engine.Farms;
using FarmPortfolio.Engine.HeatDemand;
using FarmPortfolio.Engine.Retrofits;

namespace FarmPortfolio.Engine.Tests.HeatDemand;

/// <summary>What the state of a covering does: more air changes where none are told, and nothing else.</summary>
public class FilmConditionTests
{
    [Fact]
    public void A_torn_film_leaks_at_the_leaky_end_and_a_worn_one_half_way_there()
    {
        var usual = Catalogue.BuiltIn.Find(CatalogueKind.Default, "house")!.Values["airChangesFilm"];
        var (sound, worn, torn) = (With("sound"), With("worn"), With("torn"));
        Assert.Equal(usual.Value, sound.AirChangesPerHour);
        Assert.Equal(Math.Sqrt(usual.Value * usual.High!.Value), worn.AirChangesPerHour, 1e-12);
        Assert.Equal(usual.High.Value, torn.AirChangesPerHour);
        Assert.Equal(sound.RoofU, torn.RoofU);
        var heat = new[] { sound, worn, torn }.Select(m => TestHouse.Heat(OptionModels.AsItStands(m))).ToArray();
        Assert.True(heat[0] < heat[1] && heat[1] < heat[2], string.Join(" < ", heat));
        Assert.Contains(torn.DefaultsUsed, d => d.Title == "air changes an hour, covering torn" && d.Value == usual.High.Value);
    }

    [Fact]
    public void Air_changes_that_were_told_stand()
    {
        var told = TestHouse.Model(TestHouse.Facts with { AirChangesPerHour = 0.8, Surfaces = [new(SurfacePart.Roof, "doublefilm", null, "torn")] });
        Assert.Equal(0.8, told.AirChangesPerHour);
    }

    [Fact]
    public void A_word_that_is_no_state_is_refused()
    {
        var fault = Assert.Single(HouseChecks.Of(TestHouse.Facts with { Surfaces = [new(SurfacePart.Roof, "doublefilm", null, "so-so")] }, Catalogue.BuiltIn, 2026));
        Assert.Equal("surfaces", fault.Field);
        Assert.Contains("sound, worn or torn", fault.Remedy, StringComparison.Ordinal);
    }

    private static HouseModel With(string condition) => TestHouse.Model(TestHouse.Facts with { Surfaces = [new(SurfacePart.Roof, "doublefilm", null, condition), new(SurfacePart.EndWalls, "doublefilm")] });
}
