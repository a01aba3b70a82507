using Grpc.Core;
using StudioCalc.Maths;
using StudioCalc.V1;

namespace StudioCalc.Services;

/// <summary>Answers the calls of <c>LightingRatioService</c>.</summary>
public sealed partial class LightingRatioAdapter : LightingRatioService.LightingRatioServiceBase
{
    private static readonly V1.BalanceVariable[] DefaultPreference =
        [V1.BalanceVariable.FlashPower, V1.BalanceVariable.ShutterSpeed];

    /// <inheritdoc/>
    public override Task<BalanceFillResponse> BalanceFill(BalanceFillRequest request, ServerCallContext context)
    {
        ArgumentNullException.ThrowIfNull(request);
        var none = default(NoTrail);
        var gathered = new RequestContext(request.Camera.HasScale ? request.Camera.Scale : null);
        var input = BalanceReader.Read(gathered, request, ref none);
        gathered.ThrowIfRefused();

        var response = new BalanceFillResponse
        {
            MeteredBackOverFillStops = Balance.MeteredBackOverFillStops(input!),
            ModelRevision = ModelRevision.Current,
        };
        IEnumerable<V1.BalanceVariable> preference = request.Preference.Count > 0 ? request.Preference : DefaultPreference;
        response.Ways.Add(preference.Select(variable => Way(request, input!, ToMaths(variable))));
        response.Advisories.Add(gathered.Advisories);
        return Task.FromResult(response);
    }

    private static BalanceWay Way(BalanceFillRequest request, BalanceInput input, Maths.BalanceVariable variable)
    {
        double? distanceMm = request.Fill.HasDistanceMm ? request.Fill.DistanceMm : null;
        if (!request.IncludeWorking)
        {
            var none = default(NoTrail);
            return BalanceWriter.Way(input, variable, Balance.Solve(input, variable, ref none), distanceMm);
        }

        // The readings are worked out again, so that every way's sum is whole.
        var trail = StepTrail.Start();
        BalanceReader.Read(new(request.Camera.HasScale ? request.Camera.Scale : null), request, ref trail);
        var way = BalanceWriter.Way(input, variable, Balance.Solve(input, variable, ref trail), distanceMm);
        way.Working.Add(trail, way.ResultCase == BalanceWay.ResultOneofCase.Solution ? "solution." : "not_reached.nearest.");
        return way;
    }

    private static Maths.BalanceVariable ToMaths(V1.BalanceVariable variable) => variable switch
    {
        V1.BalanceVariable.FlashPower => Maths.BalanceVariable.FlashPower,
        V1.BalanceVariable.ShutterSpeed => Maths.BalanceVariable.ShutterSpeed,
        _ => throw new ArgumentOutOfRangeException(nameof(variable)),
    };
}
