using Grpc.Core;
using StudioCalc.Maths;
using StudioCalc.V1;

namespace StudioCalc.Services;

/// <content>MatchColour.</content>
public sealed partial class ExposureAdapter
{
    private const double ShowingMired = 15;
    private const double CoolestHotLampK = 2500;
    private const double HottestHotLampK = 3600;

    /// <inheritdoc/>
    public override Task<MatchColourResponse> MatchColour(MatchColourRequest request, ServerCallContext context)
    {
        ArgumentNullException.ThrowIfNull(request);
        if (!request.IncludeWorking)
        {
            var none = default(NoTrail);
            return Task.FromResult(Colour(request, ref none));
        }

        var trail = StepTrail.Start();
        var response = Colour(request, ref trail);
        response.Working.Add(trail);
        return Task.FromResult(response);
    }

    private static MatchColourResponse Colour<TTrail>(MatchColourRequest request, ref TTrail trail)
        where TTrail : struct, ITrail
    {
        var gels = request.Gels.Count == 0
            ? ColourShift.CommonGels
            : [.. request.Gels.Select(gel => new ColourGel(gel.Name, gel.ShiftMired, gel.LossStops))];
        var matches = ColourShift.Match(request.FromK, request.ToK, gels);
        var response = new MatchColourResponse
        {
            ShiftMired = ColourShift.NeededMired(request.FromK, request.ToK, ref trail),
            ModelRevision = ModelRevision.Current,
        };
        response.Gels.Add(matches.Select(Gel));
        if (Math.Abs(response.ShiftMired) > ShowingMired)
        {
            if (Math.Abs(matches[0].RestMired) > ShowingMired)
            {
                response.Advisories.Add(Advise.ColourLeft(matches[0].RestMired));
            }

            if (request.FromK is >= CoolestHotLampK and <= HottestHotLampK)
            {
                response.Advisories.Add(Advise.GelOnHotLamp());
            }
        }

        return response;
    }

    private static GelMatch Gel(ColourMatch match)
    {
        var answer = new GelMatch
        {
            Gel = new() { Name = match.Gel.Name, ShiftMired = match.Gel.ShiftMired, LossStops = match.Gel.LossStops },
            RestMired = match.RestMired,
        };
        if (match.ResultK is { } result)
        {
            answer.ResultK = result;
        }

        return answer;
    }
}
