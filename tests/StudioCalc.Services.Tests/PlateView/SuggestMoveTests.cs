using StudioCalc.V1;

namespace StudioCalc.Services.Tests;

public sealed class SuggestMoveTests
{
    [Fact]
    public void Moves_Made_ShowEverything()
    {
        var request = Examples.Move();
        var moves = Calls.PlateView.SuggestMove(request).Solution.Moves;
        Assert.NotEmpty(moves);
        foreach (var move in moves)
        {
            var scene = request.Scene.Clone();
            var component = scene.Components.Single(one => one.Name == move.Name);
            component.Base.XMm += move.RightMm;
            component.Base.YMm += move.AwayMm;
            var view = Calls.PlateView.EvaluateView(new() { Scene = scene, Camera = request.Camera });
            Assert.Equal(move.LeastVisibleShare, view.Components.Min(one => one.VisibleShare), 1e-12);
            Assert.True(move.LeastVisibleShare >= request.LeastVisibleShare);
            Assert.DoesNotContain(request.FixedComponents, place => request.Scene.Components[(int)place].Name == move.Name);
        }
    }

    [Fact]
    public void Nothing_ToMove_IsSaid()
    {
        var request = Examples.Move();
        request.Camera.Direction.ElevationDeg = 70;
        var answer = Calls.PlateView.SuggestMove(request).Solution;
        Assert.True(answer.NothingToMove);
        Assert.Empty(answer.Moves);
    }

    [Fact]
    public void Room_TooSmall_IsNotReached_WithTheShortfall()
    {
        var request = Examples.Move();
        request.LongestMoveMm = 3;
        var answer = Calls.PlateView.SuggestMove(request).NotReached;
        Assert.Equal("hummus", answer.LeastVisible);
        Assert.Equal(0.5 - answer.Nearest.LeastVisibleShare, answer.ShortfallShare, 1e-12);
    }

    [Fact]
    public void Fixed_ThatIsNone_IsRefused()
    {
        var request = Examples.Move();
        request.FixedComponents.Add(4);
        Assert.Equal("fixed_components[1]", Assert.Single(Calls.Refused(() => Calls.PlateView.SuggestMove(request))).Field);
    }
}
