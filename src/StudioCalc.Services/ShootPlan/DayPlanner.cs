using Grpc.Core;
using StudioCalc.Maths;
using StudioCalc.V1;

namespace StudioCalc.Services;

/// <summary>A plan, with the clock of its day.</summary>
internal sealed record PlannedDay(DayClock Clock, PlanShootResponse Plan);

/// <summary>Composes a plan from the calls of all subjects.</summary>
/// <param name="request">What is planned.</param>
/// <param name="call">The call.</param>
internal sealed class DayPlanner(PlanShootRequest request, ServerCallContext call)
{
    private const int UsualReplications = 2000;
    private const int LeastReplications = 100;
    private const double SetupsShare = 0.1;
    private const double ShotsShare = 0.2;
    private const double OrderShare = 0.4;

    private static readonly FieldPath Root = FieldPath.Root(PlanShootRequest.Descriptor);
    private static readonly FieldPath ThroughputRoot = FieldPath.Root(EstimateThroughputRequest.Descriptor);

    private static readonly FillPlacementAdapter Fill = new();
    private static readonly ExposureAdapter Exposure = new();
    private static readonly PlateViewAdapter View = new();
    private static readonly DepthOfFieldAdapter Focus = new();
    private static readonly FreshnessAdapter Freshness = new();

    /// <summary>Plans.</summary>
    /// <param name="tell">Is told how far it is.</param>
    /// <exception cref="RpcException">Any field is bad.</exception>
    public async Task<PlannedDay> PlanAsync(Action<PlanStep, double> tell)
    {
        var context = new RequestContext(null);
        var clock = DayClock.Read(context, request.Start, Root[PlanShootRequest.StartFieldNumber]);
        PlanNames.Check(context, request, Root);
        _ = context.DraftDay(request.Day, Root[PlanShootRequest.DayFieldNumber]);
        var parts = new PlanParts(context);
        var response = new PlanShootResponse { Title = request.Title, ModelRevision = ModelRevision.Current };
        await SetupsAsync(parts, response, tell).ConfigureAwait(false);
        await ShotsAsync(parts, response, tell).ConfigureAwait(false);
        context.ThrowIfRefused();
        response.Start = clock!.Timestamp;
        response.TimeZone = clock.Zone.Id;

        var focused = FocusChances.Put(context, request.Day, response.Shots, Root);
        await OrderAsync(parts, focused, response, tell).ConfigureAwait(false);
        context.ThrowIfRefused();
        PlanNotes.Note(context, request, response, Root);
        response.Advisories.Add(context.Advisories);
        tell(PlanStep.Simulation, 1);
        return new(clock, response);
    }

    private async Task SetupsAsync(PlanParts parts, PlanShootResponse response, Action<PlanStep, double> tell)
    {
        var path = Root[PlanShootRequest.SetupsFieldNumber];
        for (var i = 0; i < request.Setups.Count; i++)
        {
            tell(PlanStep.Setups, SetupsShare * i / request.Setups.Count);
            call.CancellationToken.ThrowIfCancellationRequested();
            var (setup, at) = (request.Setups[i], path.At(i));
            response.Setups.Add(new PlannedSetup
            {
                Name = setup.Name,
                Fill = await parts.AnswerAsync(setup.Fill, at[PlanSetup.FillFieldNumber], one => Fill.PlanFill(one, call)).ConfigureAwait(false),
                Exposure = await parts.AnswerAsync(setup.Exposure, at[PlanSetup.ExposureFieldNumber], one => Exposure.SolveExposure(one, call))
                    .ConfigureAwait(false),
            });
        }
    }

    private async Task ShotsAsync(PlanParts parts, PlanShootResponse response, Action<PlanStep, double> tell)
    {
        var path = Root[PlanShootRequest.ShotsFieldNumber];
        for (var i = 0; i < request.Shots.Count; i++)
        {
            tell(PlanStep.Shots, SetupsShare + ShotsShare * i / request.Shots.Count);
            call.CancellationToken.ThrowIfCancellationRequested();
            var (shot, at) = (request.Shots[i], path.At(i));
            var planned = new PlannedShot
            {
                Name = shot.Shot,
                Setup = shot.Setup,
                View = await parts.AnswerAsync(shot.View, at[PlanShot.ViewFieldNumber], one => View.EvaluateView(one, call)).ConfigureAwait(false),
                Focus = await parts.AnswerAsync(shot.Focus, at[PlanShot.FocusFieldNumber], one => Focus.PlaceFocus(one, call)).ConfigureAwait(false),
                Budget = await parts.AnswerAsync(shot.Budget, at[PlanShot.BudgetFieldNumber], one => Freshness.CheckBudget(one, call))
                    .ConfigureAwait(false),
            };
            if (shot.HasFocusErrorMm && planned.Focus is { } focus)
            {
                FocusChances.Tell(planned, focus, shot.FocusErrorMm);
            }

            response.Shots.Add(planned);
        }
    }

    private async Task OrderAsync(PlanParts parts, ShootDay focused, PlanShootResponse response, Action<PlanStep, double> tell)
    {
        tell(PlanStep.Order, SetupsShare + ShotsShare);
        var cancellation = call.CancellationToken;
        var (notes, dayPath) = (new RequestContext(null), Root[PlanShootRequest.DayFieldNumber]);
        var day = notes.ReadDay(focused, dayPath, cancellation);
        if (await parts.AnswerAsync(Root, () => Task.FromResult(new RequestContext(null).ReadThroughput(Throughput(day), day, ThroughputRoot))).ConfigureAwait(false)
            is not { } throughput)
        {
            return;
        }

        var effort = new Planning.OrderEffort(request.HasEffort ? (int)request.Effort : null);
        var (answer, order) = ShootPlanAdapter.Sequence(notes, day, effort, dayPath, cancellation);
        response.Order = answer;
        if ((answer.Solution ?? answer.NotReached.Nearest) is not null)
        {
            tell(PlanStep.Simulation, SetupsShare + ShotsShare + OrderShare);
            var none = default(NoTrail);
            response.Throughput = PlanParts.Lead(ShootPlanAdapter.Simulate(day, order, throughput, ref none, cancellation), "throughput");
        }
    }

    private EstimateThroughputRequest Throughput(DayRead day)
    {
        var throughput = new EstimateThroughputRequest
        {
            Day = day.Asked,
            Replications = request.HasReplications
                ? request.Replications
                : (uint)Math.Clamp(ThroughputReader.MostReplications(day, [day.Uncertainty]), LeastReplications, UsualReplications),
        };
        if (request.HasSeed)
        {
            throughput.Seed = request.Seed;
        }

        if (request.HasPolicy)
        {
            throughput.Policy = request.Policy;
        }

        if (request.HasBasis)
        {
            throughput.Basis = request.Basis;
        }

        return throughput;
    }
}
