using StudioCalc.Maths;
using StudioCalc.V1;

namespace StudioCalc.Services;

/// <summary>Writes an answer of <c>SolveAperture</c>.</summary>
internal static class SolveApertureWriter
{
    public static SolveApertureResponse Response(ApertureRead read, ApertureOutcome outcome)
    {
        var response = new SolveApertureResponse
        {
            GeometricAperture = CameraWriter.Aperture(outcome.GeometricFNumber, read.Range.Scale),
            LeastBlurAperture = CameraWriter.Aperture(outcome.LeastBlurFNumber, read.Range.Scale),
            LeastBlurUm = outcome.LeastBlurUm,
            FocusSpreadMm = outcome.FocusSpreadMm,
            PermittedBlurUm = read.BlurMm * 1000,
            ModelRevision = ModelRevision.Current,
        };
        if (outcome.Obstacle == Maths.DepthObstacle.None)
        {
            response.Solution = Solution(read, outcome);
            return response;
        }

        response.NotReached = new()
        {
            Obstacle = DepthWriter.Obstacle(outcome.Obstacle),
            ShortfallUm = outcome.ShortfallUm,
            Nearest = Solution(read, outcome),
        };
        var choice = new ApertureChoice(read.Range.Settable(), read.WavelengthUm);
        response.NotReached.Remedies.Add(DepthRemedies.For(read.Points, read.BlurMm, choice, read.WavelengthUm)
            .Select(remedy => DepthWriter.Remedy(remedy, read.Range, read.Sensor)));
        return response;
    }

    private static ApertureSolution Solution(ApertureRead read, ApertureOutcome outcome)
    {
        var lens = read.Focus.Lens;
        return new()
        {
            Aperture = DepthWriter.Aperture(outcome.FNumber, outcome.SetFNumber, read.Range),
            EffectiveFNumber = outcome.EffectiveFNumber,
            Focus = OpticsWriter.Lens(lens, read.Sensor),
            Zone = OpticsWriter.Zone(lens, Maths.SharpZone.Evaluate(lens, outcome.SetFNumber, read.BlurMm)),
            AiryDiscUm = outcome.AiryDiscUm,
            EndBlurUm = outcome.EndBlurUm,
            EndBlurWithDiffractionUm = outcome.EndBlurWithDiffractionUm,
        };
    }
}
