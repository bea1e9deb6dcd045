using FarmPortfolio.Engine.HeatDemand;
using FarmPortfolio.Engine.Weather;
using GraphQL;

namespace FarmPortfolio.Host.Api;

/// <summary>Peak demand of an option against the heater.</summary>
[Name("HeaterSize")]
public sealed record HeaterSizeView(string Key, double DesignC, double NeedKw, double NeedOpenKw, double? OutputKw, double? HoldsToC, double NextInputKw, bool TooSmall, double ColdHours, double UndeliveredKwh);

/// <summary>The heater of a house against its coldest nights.</summary>
public sealed partial class HouseView
{
    /// <summary>Outside temperature that 99 % of the recorded hours are above, C; null where the farm has no record.</summary>
    public double? Design99C => Design?.At99C;

    /// <summary>Outside temperature that 99.6 % of the recorded hours are above, C.</summary>
    public double? Design996C => Design?.At996C;

    /// <summary>Heater size as the house stands and with each option, at the 99 % design temperature; cold hours of the middling winter.</summary>
    public IEnumerable<HeaterSizeView> HeaterSizes
    {
        get
        {
            if (model.Value.Model is not { } house || Design is not { } design || register.Middling(item.Facts) is not { } year)
            {
                return [];
            }

            var options = (register.OptionSet(item.Id)?.Facts.Options ?? []).Select(o => (o.Key, OptionModels.Of(house, o).Model)).Where(o => o.Model is not null);
            return options.Prepend(("none", OptionModels.AsItStands(house))).Select(o =>
            {
                var (size, season) = (HeaterSizing.Of(o.Item2!, design.At99C), HeatBalance.Season(o.Item2!, year));
                return new HeaterSizeView(o.Item1, design.At99C, size.NeedKw, size.NeedOpenKw, size.OutputKw, size.HoldsToC, size.NextInputKw, size.TooSmall, season.ColdHours, season.UndeliveredKwh);
            });
        }
    }

    private DesignTemperature? Design => register.Farms.TryGetValue(item.Facts.FarmId, out var farm) && register.Winters(farm.Facts.WeatherStationId)?.Years.Values.Where(y => !y.FromNormals).ToList() is { Count: > 0 } years ? DesignTemperature.Of(years) : null;
}
