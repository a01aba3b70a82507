using Google.Protobuf.WellKnownTypes;
using StudioCalc.Maths;
using StudioCalc.V1;

namespace StudioCalc.Services;

/// <summary>Writes focus stacks as answers.</summary>
internal static class StackWriter
{
    private const int MostPositions = 500;

    public static FocusStack Stack(RequestContext context, StackInput input, StackOutcome outcome)
    {
        var stack = outcome.Stack!;
        var answer = new FocusStack
        {
            Frames = (uint)stack.Frames.Count,
            TravelMm = outcome.TravelMm,
            Aperture = CameraWriter.Aperture(input.FNumber, context.Scale),
            EffectiveFNumber = input.FNumber * input.Lens.EffectiveFactor,
        };
        if (double.IsFinite(stack.DepthPerFrameMm))
        {
            answer.DepthPerFrameMm = stack.DepthPerFrameMm;
        }

        if (stack.StepMm is { } step)
        {
            answer.StepMm = step;
        }

        if (outcome.TimeS is { } time)
        {
            answer.Time = Duration.FromTimeSpan(TimeSpan.FromSeconds(time));
        }

        answer.Positions.Add(stack.Frames.Take(MostPositions).Select(frame => Frame(stack, input.Method, frame)));
        if (stack.Frames.Count > MostPositions)
        {
            context.Advisories.Add(Advise.PositionsCut(stack.Frames.Count - MostPositions));
        }

        return answer;
    }

    public static StackNotReached NotReached(
        RequestContext context, StackInput input, StackTimes? times, double wavelengthUm, StackOutcome outcome)
    {
        var answer = new StackNotReached
        {
            Obstacle = outcome.Obstacle switch
            {
                Maths.StackObstacle.Time => V1.StackObstacle.Time,
                Maths.StackObstacle.Frames => V1.StackObstacle.Frames,
                Maths.StackObstacle.Diffraction => V1.StackObstacle.Diffraction,
                _ => throw new ArgumentOutOfRangeException(nameof(outcome)),
            },
            DepthThatFitsMm = outcome.DepthThatFitsMm,
            ShortfallMm = outcome.ShortfallMm,
        };
        if (outcome.ShortfallS is { } time)
        {
            answer.ShortfallS = time;
        }

        if (outcome.FramesNeeded is { } frames)
        {
            answer.FramesNeeded = (uint)frames;
        }

        if (outcome.Stack is not null)
        {
            answer.Nearest = Stack(context, input, outcome);
        }

        if (StackAperture.ThatFits(input, times, context.Scale, wavelengthUm) is { } aperture)
        {
            answer.ApertureThatFits = CameraWriter.Aperture(aperture, context.Scale);
        }

        return answer;
    }

    private static StackFrame Frame(StackFrames stack, Maths.StackMethod method, PlannedFrame frame)
    {
        var answer = new StackFrame
        {
            FocusOffsetMm = frame.FocusMm,
            Magnification = frame.Magnification,
            FromEntrancePupilMm = frame.FromEntrancePupilMm,
            NearOffsetMm = frame.NearMm,
        };
        if (method == Maths.StackMethod.FocusingRail)
        {
            answer.TravelMm = frame.FocusMm - stack.Frames[0].FocusMm;
        }

        if (double.IsFinite(frame.FarMm))
        {
            answer.FarOffsetMm = frame.FarMm;
        }

        return answer;
    }
}
