using Grpc.Core;
using StudioCalc.Maths;
using StudioCalc.V1;

namespace StudioCalc.Services;

/// <content>SuggestMove.</content>
public sealed partial class PlateViewAdapter
{
    private static readonly FieldPath MoveRoot = FieldPath.Root(SuggestMoveRequest.Descriptor);

    /// <inheritdoc/>
    public override Task<SuggestMoveResponse> SuggestMove(SuggestMoveRequest request, ServerCallContext context)
    {
        ArgumentNullException.ThrowIfNull(request);
        ArgumentNullException.ThrowIfNull(context);
        var read = new RequestContext(scale: null);
        var none = default(NoTrail);
        var scenePath = MoveRoot[SuggestMoveRequest.SceneFieldNumber];
        var scene = read.ReadScene(request.Scene, scenePath);
        var camera = read.ReadViewCamera(request.Camera, MoveRoot[SuggestMoveRequest.CameraFieldNumber], ref none);
        if (scene is not null && camera is not null)
        {
            read.CheckPlaces(scene.Scene, camera.Geometry, scenePath);
        }

        var isFixed = ReadFixed(read, request);
        read.ThrowIfRefused();
        var search = new MoveSearch
        {
            Scene = scene!.Scene,
            Camera = camera!.Geometry,
            Importances = scene.Importances,
            IsFixed = isFixed,
            LeastShare = request.HasLeastVisibleShare ? request.LeastVisibleShare : RankingReader.DefaultLeastShare,
            LongestMm = request.HasLongestMoveMm ? request.LongestMoveMm : RankingWriter.DefaultLongestMoveMm,
        };
        var found = ViewMoves.Find(search, context.CancellationToken);
        return Task.FromResult(Moves(request, read, scene, search, found));
    }

    private static SuggestMoveResponse Moves(
        SuggestMoveRequest request, RequestContext context, SceneRead scene, MoveSearch search, MovesFound found)
    {
        var response = new SuggestMoveResponse { ModelRevision = ModelRevision.Current };
        if (found.NothingToMove || found.Moves.Count > 0)
        {
            response.Solution = new() { NothingToMove = found.NothingToMove };
            response.Solution.Moves.Add(found.Moves.Select(move => RankingWriter.Move(scene, move)));
        }
        else
        {
            response.NotReached = new()
            {
                LeastVisible = scene.Names[found.Least],
                Nearest = found.Nearest is { } nearest ? RankingWriter.Move(scene, nearest) : null,
            };
        }

        if (request.IncludeWorking)
        {
            var trail = StepTrail.Start();
            Shortfall(response, search, found, ref trail);
            response.Working.Add(trail);
        }
        else
        {
            var none = default(NoTrail);
            Shortfall(response, search, found, ref none);
        }

        if (!found.NothingToMove)
        {
            for (var i = 0; i < search.Scene.Solids.Count; i++)
            {
                if (!search.IsFixed[i] && !ViewMoves.CanMove(search.Scene, i))
                {
                    context.Advisories.Add(Advise.RestingNotMoved(
                        MoveRoot[SuggestMoveRequest.SceneFieldNumber][Scene.ComponentsFieldNumber].ItemAt(i)));
                }
            }
        }

        response.Advisories.Add(context.Advisories);
        return response;
    }

    private static void Shortfall<TTrail>(SuggestMoveResponse response, MoveSearch search, MovesFound found, ref TTrail trail)
        where TTrail : struct, ITrail
    {
        if (response.NotReached is { } missed)
        {
            trail.Section("shortfall");
            missed.ShortfallShare = ViewMoves.Shortfall(search, found, "not_reached.shortfall_share", ref trail);
        }
        else if (found.Moves.Count > 0)
        {
            trail.Section("shortest move");
            found.Moves[0].Distance("solution.moves[0].", ref trail);
        }
        else
        {
            trail.Section("as it stands");
            trail.Given("nothing", 1, "", "everything shows already", "solution.nothing_to_move");
        }
    }

    private static bool[] ReadFixed(RequestContext context, SuggestMoveRequest request)
    {
        var isFixed = new bool[request.Scene.Components.Count];
        for (var i = 0; i < request.FixedComponents.Count; i++)
        {
            if (request.FixedComponents[i] < isFixed.Length)
            {
                isFixed[request.FixedComponents[i]] = true;
            }
            else
            {
                context.Violations.Add(MoveRoot[SuggestMoveRequest.FixedComponentsFieldNumber].ItemAt(i), RefusalReason.OutOfRange,
                    FormattableString.Invariant($"There is no such component; they are counted from 0 to {isFixed.Length - 1}."));
            }
        }

        return isFixed;
    }
}
