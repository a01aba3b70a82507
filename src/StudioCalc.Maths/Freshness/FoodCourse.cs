namespace StudioCalc.Maths;

/// <summary>Food followed over time: its temperatures at any moment, each asked for after the one before.</summary>
public sealed class FoodCourse
{
    private const double MeatActivity = 0.98;
    private const int PieceLayers = 40;
    private const int ScoopLayers = 50;
    private const double ThinnestLayerMm = 0.2;

    private readonly Func<double, FoodState> _at;

    private FoodCourse(Func<double, FoodState> at, Func<double, double> loss, bool isSeries) =>
        (_at, Loss, IsSeries) = (at, loss, isSeries);

    /// <summary>Loss of the surface at a temperature. [W/m²]</summary>
    public Func<double, double> Loss { get; }

    /// <summary>Whether the exact series applies; otherwise layers are stepped.</summary>
    public bool IsSeries { get; }

    /// <summary>Starts to follow food.</summary>
    /// <param name="body">The food.</param>
    /// <param name="room">The room.</param>
    public static FoodCourse Of(FoodBody body, Room room) => body switch
    {
        LiquidBody liquid => Liquid(liquid, room),
        FilmBody film => Film(film, room),
        PieceBody { Plate: null } piece when room.Movement == AirMovement.Total => Series(piece, room),
        PieceBody piece => Piece(piece, room),
        ScoopBody scoop => Scoop(scoop, room),
        _ => throw new ArgumentOutOfRangeException(nameof(body)),
    };

    /// <summary>The temperatures at a moment, not before the last one asked for.</summary>
    /// <param name="seconds">From the start. [s]</param>
    public FoodState At(double seconds) => _at(seconds);

    /// <summary>The lowest and the highest temperature that food may take: between its start, where it settles, and its plate. [°C]</summary>
    /// <param name="body">The food.</param>
    /// <param name="room">The room.</param>
    public static (double Low, double High) Range(FoodBody body, Room room)
    {
        ArgumentNullException.ThrowIfNull(body);
        ArgumentNullException.ThrowIfNull(room);
        var (form, size, wetness, activity) = SurfaceOf(body);
        var loss = room.Loss(form, size, wetness, activity);
        var (air, walls) = (room.Air.TemperatureCelsius, room.WallsCelsius);
        var settles = Root.Find(loss, Math.Min(air, walls) - 40, Math.Max(air, walls) + 40);
        var plate = body switch
        {
            LiquidBody liquid => liquid.Plate,
            FilmBody film => film.Plate,
            PieceBody piece => piece.Plate,
            _ => null,
        };
        double[] ends = [body.StartCelsius, settles, plate?.StartCelsius ?? settles, plate is null ? settles : air];
        return (ends.Min(), ends.Max());
    }

    /// <summary>The form over which the air flows, its size, and the activity of the surface's water.</summary>
    /// <param name="body">The food.</param>
    public static (FlowForm Form, double SizeMm, double Wetness, double WaterActivity) SurfaceOf(FoodBody body) => body switch
    {
        LiquidBody liquid => (FlowForm.FaceUp, liquid.SurfaceDiameterMm, liquid.Wetness, 1),
        FilmBody film => (FlowForm.FaceUp, film.DiameterMm, film.Wetness, 1),
        PieceBody { Shape: SolidShape.Slab } piece => (FlowForm.FaceUp, piece.FaceDiameterMm, piece.Wetness, MeatActivity),
        PieceBody { Shape: SolidShape.Cylinder } piece => (FlowForm.Cylinder, piece.SizeMm, piece.Wetness, MeatActivity),
        PieceBody piece => (FlowForm.Ball, piece.SizeMm, piece.Wetness, MeatActivity),
        ScoopBody scoop => (FlowForm.Ball, scoop.DiameterMm, 1, 1),
        _ => throw new ArgumentOutOfRangeException(nameof(body)),
    };

    private static FoodCourse Liquid(LiquidBody liquid, Room room)
    {
        var area = Discs.AreaM2(liquid.SurfaceDiameterMm);
        var cells = HeatCells.Mixed(liquid.MassG / 1000 / liquid.Properties.Density, area);
        return Follow(
            new PlainStore(liquid.Properties.SpecificHeat), cells, liquid.Properties, liquid.StartCelsius, liquid, room,
            liquid.WallCoefficient * area, liquid.Plate?.Under(liquid.SurfaceDiameterMm));
    }

    private static FoodCourse Film(FilmBody film, Room room)
    {
        var cells = HeatCells.Mixed(film.ThicknessMm / 1000 * Discs.AreaM2(film.DiameterMm), Discs.AreaM2(film.DiameterMm));
        return Follow(
            new PlainStore(film.Properties.SpecificHeat), cells, film.Properties, film.ContactCelsius, film, room,
            0, film.Plate.Under(film.DiameterMm));
    }

    private static FoodCourse Piece(PieceBody piece, Room room)
    {
        var layers = (int)Math.Clamp(piece.LengthM * 1000 / ThinnestLayerMm, 4, PieceLayers);
        var cells = piece.Shape == SolidShape.Slab
            ? HeatCells.Slab(piece.LengthM, Discs.AreaM2(piece.FaceDiameterMm), layers)
            : HeatCells.Round(piece.LengthM, piece.Shape == SolidShape.Ball, layers);
        return Follow(
            new PlainStore(piece.Properties.SpecificHeat), cells, piece.Properties, piece.StartCelsius, piece, room,
            0, piece.Plate?.Under(piece.FaceDiameterMm));
    }

    private static FoodCourse Scoop(ScoopBody scoop, Room room) => Follow(
        scoop.Mix,
        HeatCells.Round(scoop.DiameterMm / 2000, isBall: true, ScoopLayers),
        new FoodProperties(scoop.Conductivity, scoop.Density, IceCreamMix.LeastSpecificHeat),
        scoop.StartCelsius,
        scoop,
        room,
        0,
        null);

    private static FoodCourse Series(PieceBody piece, Room room)
    {
        var (air, length, properties) = (room.Air.TemperatureCelsius, piece.LengthM, piece.Properties);
        var biot = room.Value * length / properties.Conductivity;
        var series = new Conduction(piece.Shape, biot);
        var drop = piece.StartCelsius - air;
        return new(
            seconds =>
            {
                var fourier = properties.Diffusivity * seconds / (length * length);
                var surface = fourier < Conduction.LeastFourier ? EarlySurface.Theta(biot, fourier) : series.Surface(fourier);
                return new(seconds, air + drop * surface, air + drop * series.Core(fourier), air + drop * series.Mean(fourier), null);
            },
            celsius => room.Value * (celsius - air),
            isSeries: true);
    }

    private static FoodCourse Follow<TStore>(
        TStore store,
        HeatCells cells,
        FoodProperties properties,
        double startCelsius,
        FoodBody body,
        Room room,
        double sideConductance,
        PlateNode? plate)
        where TStore : struct, IHeatStore
    {
        var (form, size, wetness, activity) = SurfaceOf(body);
        var loss = room.Loss(form, size, wetness, activity);
        var course = new HeatCourse<TStore>(
            store, cells, properties, startCelsius, room.Air.TemperatureCelsius, loss, sideConductance, plate);
        return new(
            seconds =>
            {
                course.Advance(seconds);
                return course.State;
            },
            loss,
            isSeries: false);
    }
}
