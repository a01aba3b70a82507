using StudioCalc.Maths;
using StudioCalc.V1;

namespace StudioCalc.Services;

/// <summary>Writes what a calculation took food and room to be.</summary>
internal static class FactsWriter
{
    /// <summary>The facts of a component; null where no temperature is computed.</summary>
    public static ThermalFacts? Facts<TTrail>(HoldingRead read, ref TTrail trail)
        where TTrail : struct, ITrail => read switch
    {
        CoolingRead cooling => Facts(cooling.Food, cooling.Room, ref trail),
        ScoopRead scoop => Facts(scoop.Food, scoop.Room, ref trail),
        LeavesRead { Food: { } food, Room: { } room } => Facts(food, room, ref trail),
        GlassRead glass => Glass(glass),
        _ => null,
    };

    public static ThermalFacts Facts<TTrail>(BodyRead food, Room room, ref TTrail trail)
        where TTrail : struct, ITrail
    {
        var facts = OfRoom(room);
        switch (food.Body)
        {
            case LiquidBody liquid:
                Write(facts, liquid.Properties, food.Properties);
                break;
            case FilmBody film:
                Write(facts, film.Properties, food.Properties);
                facts.ContactCelsius = film.ContactCelsius;
                break;
            case PieceBody piece:
                Write(facts, piece.Properties, food.Properties);
                break;
            case ScoopBody scoop:
                Write(facts, scoop, room);
                break;
        }

        WriteLoss(facts, food.Body, room, ref trail);
        return facts;
    }

    private static void Write(ThermalFacts facts, Maths.FoodProperties properties, PropertiesRead? read)
    {
        facts.ConductivityWPerMK = properties.Conductivity;
        facts.DensityKgPerM3 = properties.Density;
        facts.SpecificHeatJPerKgK = properties.SpecificHeat;
        if (read is { Series: { } series, Parallel: { } parallel })
        {
            facts.ConductivitySeriesWPerMK = series;
            facts.ConductivityParallelWPerMK = parallel;
        }
    }

    private static void Write(ThermalFacts facts, ScoopBody scoop, Room room)
    {
        facts.ConductivityWPerMK = scoop.Conductivity;
        facts.DensityKgPerM3 = scoop.Density;
        var heat = scoop.Mix.Heat(scoop.Mix.FreezingCelsius) - scoop.Mix.Heat(scoop.StartCelsius);
        facts.FrozenShare = scoop.Mix.Ice(scoop.StartCelsius) / scoop.Mix.Water;
        facts.HeatToMeltJ = heat * scoop.MassKg;
        var loss = FoodCourse.Of(scoop, room).Loss(scoop.Mix.FreezingCelsius);
        facts.MeltInAMinuteG = -loss * scoop.AreaM2 / heat * 60 * 1000;
    }

    private static void WriteLoss<TTrail>(ThermalFacts facts, FoodBody body, Room room, ref TTrail trail)
        where TTrail : struct, ITrail
    {
        trail.Section("surface at the start");
        var T = trail.Given("T", body is FilmBody film ? film.ContactCelsius : body.StartCelsius, "°C", "temperature of the surface");
        var Ta = trail.Given("Ta", room.Air.TemperatureCelsius, "°C", "air.temperature_celsius");
        if (room.Movement == AirMovement.Total)
        {
            facts.ConvectionWPerM2K = trail.Given("hc", room.Value, "W/(m² K)", "the whole loss, as given", "facts.convection_w_per_m2_k");
        }
        else if (T != Ta)
        {
            var (form, size, wetness, activity) = FoodCourse.SurfaceOf(body);
            var surface = room.SurfaceAt(T, form, size, wetness, activity);
            var qe = trail.Given("qe", surface.EvaporationAt(T), "W/m²", "freshness (9)");
            facts.EvaporationWPerM2K = trail.Let("he", qe / (T - Ta), "W/(m² K)", "evaporation by a kelvin", "facts.evaporation_w_per_m2_k");
            var qr = trail.Given("qr", surface.RadiationAt(T), "W/m²", "freshness (7)");
            facts.RadiationWPerM2K = trail.Let("hr", qr / (T - Ta), "W/(m² K)", "radiation by a kelvin", "facts.radiation_w_per_m2_k");
            facts.ConvectionWPerM2K = trail.Given("hc", surface.Convection, "W/(m² K)",
                room.Movement == AirMovement.Convection ? "air.convection_w_per_m2_k" : "freshness (26)", "facts.convection_w_per_m2_k");
        }

        if (body is PieceBody piece && facts.HasConvectionWPerM2K)
        {
            var h = trail.Given("h", facts.ConvectionWPerM2K + facts.RadiationWPerM2K + facts.EvaporationWPerM2K, "W/(m² K)", "all together");
            var L = trail.Given("L", piece.LengthM * 1000, "mm", "half the thickness or the radius; all of it over a plate or board");
            var k = trail.Given("k", piece.Properties.Conductivity, "W/(m K)", "conductivity");
            facts.Biot = trail.Let("Bi", h * L / 1000 / k, "", "Biot number", "facts.biot");
        }
    }

    private static ThermalFacts Glass(GlassRead read)
    {
        var facts = OfRoom(read.Room);
        if (Condensation.FilmUmPerS(read.Room, read.SurfaceCelsius) is { } film)
        {
            facts.FilmInAMinuteUm = film * 60;
        }

        return facts;
    }

    // In dry air there is no dew point.
    private static ThermalFacts OfRoom(Room room)
    {
        var facts = new ThermalFacts();
        var air = room.Air;
        if (air.RelativeHumidity > 0 && air.TemperatureCelsius is >= -45 and <= 60)
        {
            facts.DewPointCelsius = air.DewPointCelsius;
            facts.WetBulbCelsius = air.WetBulbCelsius;
            if (air.SteamFromCelsius is { } steam)
            {
                facts.SteamFromCelsius = steam;
            }
        }

        return facts;
    }
}
