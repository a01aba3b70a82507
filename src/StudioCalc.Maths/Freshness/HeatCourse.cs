using static System.Math;

namespace StudioCalc.Maths;

/// <summary>Temperatures of food at a moment.</summary>
/// <param name="Seconds">From the start. [s]</param>
/// <param name="Surface">Of the surface that the camera sees. [°C]</param>
/// <param name="Core">Of the core, or of the lower face. [°C]</param>
/// <param name="Mean">The mean by mass. [°C]</param>
/// <param name="Plate">Of the plate, where there is one. [°C]</param>
public readonly record struct FoodState(double Seconds, double Surface, double Core, double Mean, double? Plate);

/// <summary>A plate as one mass under the food.</summary>
/// <param name="Capacity">Heat that warms it by a kelvin. [J/K]</param>
/// <param name="Contact">Conductance to the food. [W/K]</param>
/// <param name="ToAir">Conductance to the air. [W/K]</param>
/// <param name="StartCelsius">Temperature at the start. [°C]</param>
public sealed record PlateNode(double Capacity, double Contact, double ToAir, double StartCelsius);

/// <summary>Food in layers that exchange heat with one another, the room and a plate, followed over time.</summary>
/// <remarks>
/// <code>
/// dH/dt = heat in from both neighbours;   the last layer loses (Ts - side) to the room, the first gains from the plate   (30)
/// G (T - Ts) = A q(Ts)                    temperature Ts of the surface, with G the half layer before it                 (31)
/// </code>
/// <para>Finite volumes, stepped by Heun's rule with the largest step that is stable by Gershgorin's bound. q: loss of the surface. Range: any; the
/// step is bounded by the thinnest layer.</para>
/// </remarks>
internal sealed class HeatCourse<TStore>
    where TStore : struct, IHeatStore
{
    private const double MostStepS = 1;
    private const int StepsBetweenLooks = 1024;

    private readonly TStore _store;
    private readonly HeatCells _cells;
    private readonly double _conductivity;
    private readonly double[] _masses;
    private readonly double _airCelsius;
    private readonly double _sideConductance;
    private readonly Func<double, double> _loss;
    private readonly PlateNode? _plate;
    private readonly CancellationToken _cancellation;
    private readonly double[] _heat;
    private readonly double[] _celsius;
    private readonly double[] _rate;
    private readonly double[] _rate2;
    private readonly double[] _trial;
    private double _plateCelsius;
    private double _surface;
    private double _seconds;

    /// <summary>Prepares food of one temperature.</summary>
    /// <param name="store">How it holds heat.</param>
    /// <param name="cells">Its layers.</param>
    /// <param name="properties">Conductivity, density, and the least specific heat, which bounds the step.</param>
    /// <param name="startCelsius">Its temperature. [°C]</param>
    /// <param name="airCelsius">Temperature of the air. [°C]</param>
    /// <param name="loss">Loss of the surface at a temperature. [W/m²]</param>
    /// <param name="sideConductance">Conductance from the mean to the air, as through the wall of a bowl. [W/K]</param>
    /// <param name="plate">A plate under the first layer.</param>
    /// <param name="cancellation">Looked at while it is followed.</param>
    public HeatCourse(
        TStore store,
        HeatCells cells,
        FoodProperties properties,
        double startCelsius,
        double airCelsius,
        Func<double, double> loss,
        double sideConductance = 0,
        PlateNode? plate = null,
        CancellationToken cancellation = default)
    {
        (_store, _cells, _conductivity, _airCelsius, _loss, _sideConductance, _plate, _cancellation) =
            (store, cells, properties.Conductivity, airCelsius, loss, sideConductance, plate, cancellation);
        _masses = [.. cells.Volumes.Select(volume => volume * properties.Density)];
        var n = _masses.Length;
        (_heat, _celsius, _rate, _rate2, _trial) = (new double[n], new double[n], new double[n], new double[n], new double[n]);
        Array.Fill(_heat, store.Heat(startCelsius));
        Array.Fill(_celsius, startCelsius);
        _plateCelsius = plate?.StartCelsius ?? 0;
        _surface = startCelsius;
        StepS = Step(properties.SpecificHeat, startCelsius);
        Rates(_heat, _plateCelsius, _rate);
    }

    /// <summary>The largest step that is stable. [s]</summary>
    public double StepS { get; }

    /// <summary>How it stands now.</summary>
    public FoodState State
    {
        get
        {
            var (heat, mass) = (0.0, 0.0);
            for (var i = 0; i < _heat.Length; i++)
            {
                heat += _masses[i] * _heat[i];
                mass += _masses[i];
            }

            return new(_seconds, _surface, _celsius[0], _store.Celsius(heat / mass), _plate is null ? null : _plateCelsius);
        }
    }

    /// <summary>Follows the food up to a time.</summary>
    /// <param name="seconds">The time, not before the present one. [s]</param>
    public void Advance(double seconds)
    {
        var steps = (int)Ceiling((seconds - _seconds) / StepS);
        var step = steps > 0 ? (seconds - _seconds) / steps : 0;
        for (var i = 0; i < steps; i++)
        {
            if (i % StepsBetweenLooks == 0)
            {
                _cancellation.ThrowIfCancellationRequested();
            }

            Take(step);
        }

        _seconds = seconds;
    }

    private void Take(double step)
    {
        var plate1 = Rates(_heat, _plateCelsius, _rate);
        for (var i = 0; i < _heat.Length; i++)
        {
            _trial[i] = _heat[i] + step * _rate[i];
        }

        var plate2 = Rates(_trial, _plateCelsius + step * plate1, _rate2);
        for (var i = 0; i < _heat.Length; i++)
        {
            _heat[i] += step / 2 * (_rate[i] + _rate2[i]);
        }

        _plateCelsius += step / 2 * (plate1 + plate2);
        Rates(_heat, _plateCelsius, _rate);
    }

    // Rates of heat of the layers in W/kg; returns that of the plate in K/s. Temperatures of layers and surface are left behind.
    private double Rates(double[] heat, double plateCelsius, double[] rate)
    {
        var last = heat.Length - 1;
        for (var i = 0; i <= last; i++)
        {
            _celsius[i] = _store.Celsius(heat[i]);
            rate[i] = 0;
        }

        for (var i = 0; i < last; i++)
        {
            var flow = _conductivity * _cells.Between[i] * (_celsius[i] - _celsius[i + 1]);
            rate[i] -= flow;
            rate[i + 1] += flow;
        }

        _surface = SurfaceOf(_celsius[last]);
        rate[last] -= _cells.SurfaceArea * _loss(_surface) + _sideConductance * (_celsius[last] - _airCelsius);
        var plateRate = 0.0;
        if (_plate is not null)
        {
            var contact = 1 / (1 / _plate.Contact + 1 / (_conductivity * _cells.ToFace));
            var flow = contact * (_celsius[0] - plateCelsius);
            rate[0] -= flow;
            plateRate = (flow - _plate.ToAir * (plateCelsius - _airCelsius)) / _plate.Capacity;
        }

        for (var i = 0; i <= last; i++)
        {
            rate[i] /= _masses[i];
        }

        return plateRate;
    }

    // (31), by Newton's rule with a numeric slope; the last surface is the first guess.
    private double SurfaceOf(double layerCelsius)
    {
        var conductance = _conductivity * _cells.ToSurface;
        if (double.IsInfinity(conductance))
        {
            return layerCelsius;
        }

        var area = _cells.SurfaceArea;
        var surface = Clamp(_surface, layerCelsius - 50, layerCelsius + 50);
        for (var i = 0; i < 8; i++)
        {
            const double near = 0.01;
            var loss = _loss(surface);
            var slope = (_loss(surface + near) - loss) / near;
            var change = (conductance * (layerCelsius - surface) - area * loss) / (conductance + area * Max(0, slope));
            surface += change;
            if (Abs(change) < 1e-9)
            {
                break;
            }
        }

        return surface;
    }

    private double Step(double specificHeat, double startCelsius)
    {
        var step = MostStepS;
        for (var i = 0; i < _masses.Length; i++)
        {
            var conductance = (i > 0 ? _conductivity * _cells.Between[i - 1] : 0)
                + (i < _masses.Length - 1 ? _conductivity * _cells.Between[i] : Outward(startCelsius))
                + (i == 0 && _plate is not null ? _plate.Contact : 0);
            step = Min(step, _masses[i] * specificHeat / conductance);
        }

        return _plate is null ? step : Min(step, _plate.Capacity / (_plate.Contact + _plate.ToAir) / 2);
    }

    // From the last layer to the room: no more than through the half layer before the surface. Evaporation is steepest where it
    // is hottest.
    private double Outward(double startCelsius)
    {
        var slope = Max(SlopeAt(startCelsius), SlopeAt(_airCelsius));
        return Min(_cells.SurfaceArea * slope, _conductivity * _cells.ToSurface) + _sideConductance;
    }

    private double SlopeAt(double celsius) => 2 * Abs(_loss(celsius + 1) - _loss(celsius));
}
