using StudioCalc.Maths;
using StudioCalc.V1;

namespace StudioCalc.Services;

/// <summary>Reads windows and places before them. What cannot be is noted.</summary>
internal static class WindowReader
{
    public static WindowOpening Opening(this Window window, double tableHeightMm) =>
        new(window.WidthMm, window.HeightMm, window.SillHeightMm - tableHeightMm);

    /// <summary>Reads the glass by its kind or by a share.</summary>
    public static WindowGlass ReadGlass(this RequestContext context, Window window, FieldPath path)
    {
        if (window is { HasGlass: true, HasTransmittance: true })
        {
            context.Violations.Add(path[Window.TransmittanceFieldNumber].ToString(), RefusalReason.Conflict,
                "The glass is told by its kind or by the share that it passes, not by both.");
        }

        return window.HasTransmittance ? new(window.Transmittance, GoesByAngle: false) : window.Glass switch
        {
            GlassKind.SingleClear => WindowGlass.SingleClear,
            GlassKind.DoubleClear => WindowGlass.DoubleClear,
            _ => WindowGlass.None,
        };
    }

    /// <summary>Reads what is seen through a window.</summary>
    public static WindowSky ReadSky(this RequestContext context, V1.SkyKind kind, Window window, FieldPath path)
    {
        if (kind != V1.SkyKind.Diffusion)
        {
            return new(kind == V1.SkyKind.Overcast ? Maths.SkyKind.Overcast : Maths.SkyKind.Uniform, window.SkylineDeg, window.SkylineLuminanceShare);
        }

        Refuse(window.HasGlass, Window.GlassFieldNumber);
        Refuse(window.HasTransmittance, Window.TransmittanceFieldNumber);
        Refuse(window.HasSkylineDeg, Window.SkylineDegFieldNumber);
        Refuse(window.HasSkylineLuminanceShare, Window.SkylineLuminanceShareFieldNumber);
        return new(Maths.SkyKind.Diffusion);

        void Refuse(bool isSet, int field)
        {
            if (isSet)
            {
                context.Violations.Add(path[field].ToString(), RefusalReason.Conflict, "Diffusion that fills the window hides it: leave it out.");
            }
        }
    }

    /// <summary>Reads every place of a list; one that cannot be read is null.</summary>
    public static IReadOnlyList<WindowPoint?> ReadAll(this RequestContext context, IReadOnlyList<WindowPlace> places, FieldPath path) =>
        [.. places.Select((place, i) => context.Read(place, path.At(i)))];

    private static WindowPoint? Read(this RequestContext context, WindowPlace place, FieldPath path)
    {
        var collector = place.Kind == ReceiverKind.Dome ? Collector.Dome : Collector.Flat;
        return place.FacingCase switch
        {
            WindowPlace.FacingOneofCase.Window => context.IsTrue(place.Window, path[WindowPlace.WindowFieldNumber]) ? At(new(0, 1, 0)) : null,
            WindowPlace.FacingOneofCase.Up => context.IsTrue(place.Up, path[WindowPlace.UpFieldNumber]) ? At(Vector.Up) : null,
            _ => At(Towards(place.Direction)),
        };

        WindowPoint At(Vector normal) => new(place.DistanceMm, place.RightMm, place.HeightMm, normal, collector);
    }

    // Azimuth 0 is towards the window here, and y grows towards it.
    private static Vector Towards(FillDirection direction)
    {
        var towards = Vector.Towards(direction.AzimuthDeg, direction.ElevationDeg);
        return towards with { Y = -towards.Y };
    }
}
