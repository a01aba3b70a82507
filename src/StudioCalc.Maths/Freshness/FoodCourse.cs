namespace StudioCalc.Maths;

/// <summary>Food followed over time: its temperatures at any moment, each asked for after the one before.</summary>
public sealed class FoodCourse
{
    private const double MeatActivity = 0.98;
    private const int PieceLayers = 40;
    private const int ScoopLayers = 50;
    private const double ThinnestLayerMm = 0.2;

    /// <summary>What changes faster than in such a step is not followed: a day would take too many of them. [s]</summary>
    private const double LeastStepS = 0.02;

    // Layers are thick enough for steps that are well above the least.
    private const double LayerStepS = 0.05;

    private readonly Func<double, FoodState> _at;

    private FoodCourse(Func<double, FoodState> at, Func<double, double> loss, double? stepS) =>
        (_at, Loss, StepS) = (at, loss, stepS);

    /// <summary>Loss of the surface at a temperature. [W/m²]</summary>
    public Func<double, double> Loss { get; }

    /// <summary>Whether the exact series applies; otherwise layers are stepped.</summary>
    public bool IsSeries => StepS is null;

    /// <summary>The step in which layers are followed; null for the series. [s]</summary>
    public double? StepS { get; }

    /// <summary>Whether it changes slowly enough to be followed in steps.</summary>
    public bool CanBeFollowed => StepS is null or >= LeastStepS;

    /// <summary>Starts to follow food.</summary>
    /// <param name="body">The food.</param>
    /// <param name="room">The room.</param>
    /// <param name="cancellation">Looked at while layers are followed.</param>
    /// <exception cref="OperationCanceledException">From <see cref="At"/>: it was cancelled.</exception>
    public static FoodCourse Of(FoodBody body, Room room, CancellationToken cancellation = default) => body switch
    {
        LiquidBody liquid => Liquid(liquid, room, cancellation),
        FilmBody film => Film(film, room, cancellation),
        PieceBody { Plate: null } piece when room.Movement == AirMovement.Total => Series(piece, room),
        PieceBody piece => Piece(piece, room, cancellation),
        ScoopBody scoop => Scoop(scoop, room, cancellation),
        _ => throw new ArgumentOutOfRangeException(nameof(body)),
    };

    /// <summary>The temperatures at a moment, not before the last one asked for.</summary>
    /// <param name="seconds">From the start. [s]</param>
    public FoodState At(double seconds) => _at(seconds);

    /// <summary>The temperature at which food settles in the end. [°C]</summary>
    /// <param name="body">The food.</param>
    /// <param name="room">The room.</param>
    public static double SettlesCelsius(FoodBody body, Room room)
    {
        ArgumentNullException.ThrowIfNull(room);
        var (form, size, wetness, activity) = SurfaceOf(body);
        var loss = room.Loss(form, size, wetness, activity);

        // Evaporation takes a surface no more than some 40 K below the air.
        var (air, walls) = (room.Air.TemperatureCelsius, room.WallsCelsius);
        return Root.Find(loss, Math.Min(air, walls) - 60, Math.Max(air, walls) + 60);
    }

    /// <summary>The lowest and the highest temperature that food may take: between its start, where it settles, and its plate. [°C]</summary>
    /// <param name="body">The food.</param>
    /// <param name="room">The room.</param>
    public static (double Low, double High) Range(FoodBody body, Room room)
    {
        ArgumentNullException.ThrowIfNull(body);
        ArgumentNullException.ThrowIfNull(room);
        var settles = SettlesCelsius(body, room);
        var plate = body switch
        {
            LiquidBody liquid => liquid.Plate,
            FilmBody film => film.Plate,
            PieceBody piece => piece.Plate,
            _ => null,
        };
        double[] ends = [body.StartCelsius, settles, plate?.StartCelsius ?? settles, plate is null ? settles : room.Air.TemperatureCelsius];
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

    private static FoodCourse Liquid(LiquidBody liquid, Room room, CancellationToken cancellation)
    {
        var area = Discs.AreaM2(liquid.SurfaceDiameterMm);
        var cells = HeatCells.Mixed(liquid.MassG / 1000 / liquid.Properties.Density, area);
        return Follow(
            new PlainStore(liquid.Properties.SpecificHeat), cells, liquid.Properties, liquid.StartCelsius, liquid, room,
            liquid.WallCoefficient * area, liquid.Plate?.Under(liquid.SurfaceDiameterMm), cancellation);
    }

    private static FoodCourse Film(FilmBody film, Room room, CancellationToken cancellation)
    {
        var cells = HeatCells.Mixed(film.ThicknessMm / 1000 * Discs.AreaM2(film.DiameterMm), Discs.AreaM2(film.DiameterMm));
        return Follow(
            new PlainStore(film.Properties.SpecificHeat), cells, film.Properties, film.ContactCelsius, film, room,
            0, film.Plate.Under(film.DiameterMm), cancellation);
    }

    private static FoodCourse Piece(PieceBody piece, Room room, CancellationToken cancellation)
    {
        var layers = Layers(piece.LengthM, piece.Properties.Diffusivity, PieceLayers);
        var cells = piece.Shape == SolidShape.Slab
            ? HeatCells.Slab(piece.LengthM, Discs.AreaM2(piece.FaceDiameterMm), layers)
            : HeatCells.Round(piece.LengthM, piece.Shape == SolidShape.Ball, layers);
        return Follow(
            new PlainStore(piece.Properties.SpecificHeat), cells, piece.Properties, piece.StartCelsius, piece, room,
            0, piece.Plate?.Under(piece.FaceDiameterMm), cancellation);
    }

    private static FoodCourse Scoop(ScoopBody scoop, Room room, CancellationToken cancellation)
    {
        var properties = new FoodProperties(scoop.Conductivity, scoop.Density, IceCreamMix.LeastSpecificHeat);
        var radius = scoop.DiameterMm / 2000;
        var cells = HeatCells.Round(radius, isBall: true, Layers(radius, properties.Diffusivity, ScoopLayers));
        return Follow(scoop.Mix, cells, properties, scoop.StartCelsius, scoop, room, 0, null, cancellation);
    }

    private static int Layers(double lengthM, double diffusivity, int most)
    {
        var thinnest = Math.Max(ThinnestLayerMm / 1000, Math.Sqrt(2 * diffusivity * LayerStepS));
        return (int)Math.Clamp(lengthM / thinnest, 1, most);
    }

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
            stepS: null);
    }

    private static FoodCourse Follow<TStore>(
        TStore store,
        HeatCells cells,
        FoodProperties properties,
        double startCelsius,
        FoodBody body,
        Room room,
        double sideConductance,
        PlateNode? plate,
        CancellationToken cancellation)
        where TStore : struct, IHeatStore
    {
        var (form, size, wetness, activity) = SurfaceOf(body);
        var loss = room.Loss(form, size, wetness, activity);
        var course = new HeatCourse<TStore>(
            store, cells, properties, startCelsius, room.Air.TemperatureCelsius, loss, sideConductance, plate, cancellation);
        return new(
            seconds =>
            {
                course.Advance(seconds);
                return course.State;
            },
            loss,
            course.StepS);
    }
}
