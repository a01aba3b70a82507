namespace StudioCalc.Maths;

/// <summary>The sight lines of a camera, told in the frame of one thing: both ends of a line are linear in its place in the
/// picture.</summary>
/// <remarks>It holds numbers rather than vectors, so that they stay in registers: most of the time of a search goes by here.</remarks>
internal readonly struct LocalLines
{
    private readonly ViewSolid? _solid;
    private readonly ViewVessel? _vessel;
    private readonly bool _isFar;
    private readonly double _ox;
    private readonly double _oy;
    private readonly double _oz;
    private readonly double _dx;
    private readonly double _dy;
    private readonly double _dz;
    private readonly double _rightX;
    private readonly double _rightY;
    private readonly double _rightZ;
    private readonly double _upX;
    private readonly double _upY;
    private readonly double _upZ;

    public LocalLines(ViewSolid solid, ViewGeometry camera)
        : this(solid.Frame, camera) => _solid = solid;

    public LocalLines(ViewVessel vessel, ViewGeometry camera)
        : this(vessel.Frame, camera) => _vessel = vessel;

    private LocalLines(in TurnedFrame frame, ViewGeometry camera)
    {
        var (from, along) = frame.Into(camera.Through(0, 0));
        var (right, up) = (frame.Direction(camera.Right), frame.Direction(camera.Up));
        (_ox, _oy, _oz) = (from.X, from.Y, from.Z);
        (_dx, _dy, _dz) = (along.X, along.Y, along.Z);
        (_rightX, _rightY, _rightZ) = (right.X, right.Y, right.Z);
        (_upX, _upY, _upZ) = (up.X, up.Y, up.Z);
        _isFar = camera.DistanceMm is null;
    }

    /// <summary>The t at which the line through a place in the plane through the aim point first meets the thing, as of
    /// <see cref="ViewGeometry.Through"/>; infinite when it does not.</summary>
    public double FirstHit(double rightMm, double upMm)
    {
        var x = _rightX * rightMm + _upX * upMm;
        var y = _rightY * rightMm + _upY * upMm;
        var z = _rightZ * rightMm + _upZ * upMm;
        return _isFar
            ? Meet(_ox + x, _oy + y, _oz + z, _dx, _dy, _dz)
            : Meet(_ox, _oy, _oz, _dx + x, _dy + y, _dz + z);
    }

    private double Meet(double ox, double oy, double oz, double dx, double dy, double dz) => _solid is { } solid
        ? solid.LocalHit(ox, oy, oz, dx, dy, dz)
        : _vessel!.LocalHit(ox, oy, oz, dx, dy, dz);
}
