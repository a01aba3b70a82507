using StudioCalc.V1;

namespace StudioCalc.Services;

/// <summary>What a person should know about a view.</summary>
internal static class ViewNotes
{
    /// <summary>From here on a camera hangs over the table. [deg]</summary>
    public const double OverheadDeg = 60;

    private const double HardlySeen = 0.1;
    private const double Coarse = 0.02;
    private const double WorthSaying = 0.05;

    public static void Note(RequestContext context, EvaluateViewResponse view, SceneRead read, FieldPath scene)
    {
        var components = scene[Scene.ComponentsFieldNumber];
        if (view.Camera.ElevationDeg >= OverheadDeg)
        {
            context.Advisories.Add(Advise.CameraOverhead(view.Camera.ElevationDeg));
        }

        var main = view.Components[read.Main];
        if (main.OutsideFrameShare > 0)
        {
            context.Advisories.Add(Advise.MainOutsideFrame(components.ItemAt(read.Main), main.OutsideFrameShare));
        }

        if (1 - main.VisibleShare > WorthSaying)
        {
            context.Advisories.Add(Advise.MainHidden(components.ItemAt(read.Main), 1 - main.VisibleShare));
        }

        for (var i = 0; i < view.Components.Count; i++)
        {
            var component = view.Components[i];
            if (i != read.Main && component.VisibleShare < HardlySeen && read.Importances[i] > 0)
            {
                context.Advisories.Add(Advise.ComponentUnseen(components.ItemAt(i), component.VisibleShare));
            }

            if (component.UncertaintyShare > Coarse)
            {
                context.Advisories.Add(Advise.CoarseSightLines(components.ItemAt(i), component.UncertaintyShare));
            }
        }

        for (var i = 0; i < read.Scene.Vessels.Count; i++)
        {
            if (read.Scene.Vessels[i].Shape.HasClearWalls)
            {
                context.Advisories.Add(Advise.ClearWallsBendLight(scene[Scene.VesselsFieldNumber].At(i)[Vessel.ClearWallsFieldNumber].ToString()));
            }
        }
    }
}
