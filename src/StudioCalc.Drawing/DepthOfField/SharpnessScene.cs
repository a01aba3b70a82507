using System.Globalization;
using StudioCalc.V1;

namespace StudioCalc.Drawing;

/// <summary>Where the parts of a sharpness picture lie, from above and in section.</summary>
/// <remarks>Depths are counted along the axis of the lens from the aim point, away from the camera. In the section the first
/// coordinate runs level, away from the camera, from the aim point; the second is the height over the table.</remarks>
internal sealed class SharpnessScene
{
    private const double StraightDownCos = 1e-6;

    private readonly (double X, double Y, double Z) _aim;
    private readonly (double X, double Y) _away;
    private readonly double _cos;
    private readonly double _sin;

    public SharpnessScene(RenderSharpnessRequest request, FocusPlacement placement)
    {
        var direction = request.Focus.Direction;
        var azimuth = direction.AzimuthDeg * Math.PI / 180;
        (_sin, _cos) = Math.SinCos(direction.ElevationDeg * Math.PI / 180);
        _away = (-Math.Sin(azimuth), Math.Cos(azimuth));
        _aim = direction.AimPoint is { } aim ? (aim.XMm, aim.YMm, aim.ZMm) : (0, 0, 0);
        PlateRadiusMm = request.HasPlateDiameterMm ? request.PlateDiameterMm / 2 : null;
        FocusMm = placement.FocusOffsetMm;
        NearMm = FocusMm - placement.Zone.NearDepthMm;
        FarMm = placement.Zone.HasFarDepthMm ? FocusMm + placement.Zone.FarDepthMm : double.PositiveInfinity;
        Components = [.. request.Focus.Components.Select((component, i) => Place(component, placement.Components[i], i, request.Focus.Components.Count))];
        PlanHeightMm = Components.First(component => component.IsMain).InSection.MiddleY;
    }

    public IReadOnlyList<Component> Components { get; }

    public double? PlateRadiusMm { get; }

    public double FocusMm { get; }

    public double NearMm { get; }

    public double FarMm { get; }

    public bool IsStraightDown => _cos < StraightDownCos;

    /// <summary>How high over the table the plan shows what is sharp: halfway up the main component.</summary>
    public double PlanHeightMm { get; }

    /// <summary>What is sharp at that height, level away from the camera; null where nothing is.</summary>
    public (double Near, double Far)? PlanBand => !IsStraightDown
        ? (AlongPlan(NearMm), AlongPlan(FarMm))
        : DepthOfPlan >= NearMm && DepthOfPlan <= FarMm
            ? (double.NegativeInfinity, double.PositiveInfinity)
            : null;

    /// <summary>Where the focused plane is at that height; null when it is level itself.</summary>
    public double? FocusOnPlan => IsStraightDown ? null : AlongPlan(FocusMm);

    public Bounds PlanBounds => Bounds.Around(
    [
        .. Components.Select(component => new Bounds(
            component.X - component.RadiusMm, component.Y - component.RadiusMm, component.X + component.RadiusMm, component.Y + component.RadiusMm)),
        .. PlateRadiusMm is { } radius ? [new Bounds(-radius, -radius, radius, radius)] : Array.Empty<Bounds>(),
        new(_aim.X - 1, _aim.Y - 1, _aim.X + 1, _aim.Y + 1),
    ]);

    public Bounds SectionBounds => Bounds.Around(
    [
        .. Components.Select(component => component.InSection),
        .. PlateRadiusMm is { } radius ? [Level(0, 0) is var middle ? new Bounds(middle - radius, 0, middle + radius, 1) : default] : Array.Empty<Bounds>(),
        new(-1, 0, 1, _aim.Z + 1),
    ]);

    private double DepthOfPlan => (_aim.Z - PlanHeightMm) * _sin;

    /// <summary>A place in the plan, from so far away from the camera and so far to the side of the axis.</summary>
    public (double X, double Y) InPlan(double awayMm, double sideMm) => (
        _aim.X + _away.X * awayMm + _away.Y * sideMm,
        _aim.Y + _away.Y * awayMm - _away.X * sideMm);

    /// <summary>A place in the section, from a depth along the axis and a height across it.</summary>
    public (double X, double Y) InSection(double depthMm, double acrossMm) => (
        depthMm * _cos + acrossMm * _sin,
        _aim.Z - depthMm * _sin + acrossMm * _cos);

    private double AlongPlan(double depthMm) => (depthMm - DepthOfPlan) / _cos;

    private double Level(double x, double y) => (x - _aim.X) * _away.X + (y - _aim.Y) * _away.Y;

    private Component Place(FocusComponent component, ComponentSharpness sharpness, int index, int count)
    {
        var (x, y, z) = (component.Position.XMm, component.Position.YMm, component.Position.ZMm);
        var radius = component.DiameterMm / 2;
        var level = Level(x, y);
        return new()
        {
            Letter = LetterOf(index),
            X = x,
            Y = y,
            RadiusMm = radius,
            InSection = new(level - radius, z, level + radius, z + component.HeightMm),
            IsMain = component.Main || count == 1,
            Sharpness = sharpness,
        };
    }

    // A to Z, then AA and so on.
    private static string LetterOf(int index) =>
        (index >= 26 ? LetterOf(index / 26 - 1) : "") + ((char)('A' + index % 26)).ToString(CultureInfo.InvariantCulture);

    internal sealed record Component
    {
        public required string Letter { get; init; }

        public required double X { get; init; }

        public required double Y { get; init; }

        public required double RadiusMm { get; init; }

        public required Bounds InSection { get; init; }

        public required bool IsMain { get; init; }

        public required ComponentSharpness Sharpness { get; init; }

        /// <summary>Its letter and its largest blur.</summary>
        public string Label => Math.Max(Sharpness.NearBlurUm, Sharpness.FarBlurUm) is var blur && blur >= 1000
            ? FormattableString.Invariant($"{Letter} {blur / 1000:0.#} mm")
            : FormattableString.Invariant($"{Letter} {blur:0} µm");
    }
}
