using Grpc.Core;
using StudioCalc.Maths;
using StudioCalc.Planning;
using StudioCalc.V1;

namespace StudioCalc.Services;

/// <content>CheckCircuit.</content>
public sealed partial class ShootPlanAdapter
{
    private const double UsualUsableShare = 0.8;

    private static readonly FieldPath CircuitRoot = FieldPath.Root(CheckCircuitRequest.Descriptor);

    /// <inheritdoc/>
    public override Task<CheckCircuitResponse> CheckCircuit(CheckCircuitRequest request, ServerCallContext context)
    {
        ArgumentNullException.ThrowIfNull(request);
        if (!request.IncludeWorking)
        {
            var none = default(NoTrail);
            return Task.FromResult(CheckLoads(request, ref none));
        }

        var trail = StepTrail.Start();
        var response = CheckLoads(request, ref trail);
        response.Working.Add(trail);
        return Task.FromResult(response);
    }

    private static CheckCircuitResponse CheckLoads<TTrail>(CheckCircuitRequest request, ref TTrail trail)
        where TTrail : struct, ITrail
    {
        var loads = request.Loads.Select(load => (load.PowerW, Count: load.HasCount ? (int)load.Count : 1)).ToList();
        var power = loads.Sum(load => load.PowerW * load.Count);
        var circuit = Planning.CircuitLoad.Evaluate(
            new()
            {
                PowerW = power,
                VoltageV = request.MainsV,
                BreakerA = request.BreakerA,
                UsableShare = request.HasUsableShare ? request.UsableShare : UsualUsableShare,
                PowerFactor = request.HasPowerFactor ? request.PowerFactor : 1,
            },
            ref trail);
        var response = new CheckCircuitResponse
        {
            CurrentA = circuit.CurrentA,
            UsableA = circuit.UsableA,
            HeadroomA = circuit.HeadroomA,
            HeadroomW = circuit.HeadroomW,
            IsWithin = circuit.HeadroomA >= 0,
            ModelRevision = ModelRevision.Current,
        };
        if (circuit.HeadroomA < 0)
        {
            response.TakeOff.Add(CircuitRelief.TakeOff(loads, power + circuit.HeadroomW)
                .Select((off, i) => new CircuitTakeOff { Name = request.Loads[i].Name, Count = (uint)off, PowerW = off * loads[i].PowerW })
                .Where(off => off.Count > 0));
            response.Advisories.Add(Advise.CircuitOverloaded(circuit.CurrentA, circuit.UsableA));
        }

        if (power > 0)
        {
            response.Advisories.Add(Advise.ElectricianDecides());
        }

        return response;
    }
}
