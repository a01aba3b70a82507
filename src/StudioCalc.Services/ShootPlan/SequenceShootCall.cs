using Grpc.Core;
using StudioCalc.Maths;
using StudioCalc.Planning;
using StudioCalc.V1;

namespace StudioCalc.Services;

/// <summary>An answer with the order behind it.</summary>
internal sealed record Sequenced(SequenceShootResponse Response, Planning.ShootOrder Order);

/// <content>SequenceShoot.</content>
public sealed partial class ShootPlanAdapter
{
    private static readonly FieldPath SequenceDay = FieldPath.Root(SequenceShootRequest.Descriptor)[SequenceShootRequest.DayFieldNumber];

    /// <inheritdoc/>
    public override Task<SequenceShootResponse> SequenceShoot(SequenceShootRequest request, ServerCallContext context)
    {
        ArgumentNullException.ThrowIfNull(request);
        ArgumentNullException.ThrowIfNull(context);
        var notes = new RequestContext(null);
        var day = notes.ReadDay(request.Day, SequenceDay, context.CancellationToken);
        var effort = new OrderEffort(request.HasEffort ? (int)request.Effort : null);
        return Task.FromResult(Sequence(notes, day, effort, SequenceDay, context.CancellationToken).Response);
    }

    /// <summary>Orders a day; the advisories of the context go into the answer.</summary>
    /// <exception cref="OperationCanceledException">It was stopped.</exception>
    internal static Sequenced Sequence(RequestContext context, DayRead day, OrderEffort effort, FieldPath dayPath, CancellationToken cancellation)
    {
        var found = Planning.ShootOrder.Find(day.Day, effort, cancellation);
        return new(Answer(context, day, found, new(day, found), dayPath, cancellation), found);
    }

    private static SequenceShootResponse Answer(
        RequestContext context, DayRead day, Planning.ShootOrder found, OrderWriter writer, FieldPath dayPath, CancellationToken cancellation)
    {
        var schedule = found.Schedule;
        var order = schedule.Order.Count > 0 || schedule.LeftOut.Count == 0 ? writer.Write() : null;
        var response = new SequenceShootResponse { ModelRevision = ModelRevision.Current };
        if (schedule.LeftOut.Count == 0 && schedule.ExcessMs == 0)
        {
            response.Solution = order;
        }
        else
        {
            response.NotReached = new() { Nearest = order };
            response.NotReached.NeverFits.Add(NeverFitsWriter.Write(day, found.Alone, cancellation));
            response.NotReached.LeftOut.Add(schedule.LeftOut.SelectMany(block => day.Day.Blocks[block].Shots).Select(shot => shot.Id));
            if (order is not null)
            {
                response.NotReached.ShortfallS = schedule.ExcessMs / 1000.0;
            }
        }

        context.NoteDay(day, dayPath);
        context.NoteOrder(day, found, order, dayPath);
        response.Advisories.Add(context.Advisories);
        return response;
    }
}
