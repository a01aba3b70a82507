using StudioCalc.V1;
using UnitsNet;

namespace StudioCalc.Client;

/// <summary>Angles and lengths of views that are looked for, and of moves, in any unit.</summary>
public static class RankingUnits
{
    extension(RankViewsRequest request)
    {
        /// <summary>Lowest height of the entrance pupil over the table; null when it is not set.</summary>
        public Length? LowestCamera
        {
            get => request.HasLowestCameraMm ? UnitsNet.Length.FromMillimeters(request.LowestCameraMm) : null;
            set
            {
                if (value is { } given)
                {
                    request.LowestCameraMm = given.Millimeters;
                }
                else
                {
                    request.ClearLowestCameraMm();
                }
            }
        }

        /// <summary>Greatest height of the entrance pupil over the table; null when it is not set.</summary>
        public Length? HighestCamera
        {
            get => request.HasHighestCameraMm ? UnitsNet.Length.FromMillimeters(request.HighestCameraMm) : null;
            set
            {
                if (value is { } given)
                {
                    request.HighestCameraMm = given.Millimeters;
                }
                else
                {
                    request.ClearHighestCameraMm();
                }
            }
        }

        /// <summary>How far the told views differ at least; null when it is not set.</summary>
        public Angle? LeastDifference
        {
            get => request.HasLeastDifferenceDeg ? UnitsNet.Angle.FromDegrees(request.LeastDifferenceDeg) : null;
            set
            {
                if (value is { } given)
                {
                    request.LeastDifferenceDeg = given.Degrees;
                }
                else
                {
                    request.ClearLeastDifferenceDeg();
                }
            }
        }
    }

    extension(AngleRange range)
    {
        /// <summary>The first angle; null when it is not set.</summary>
        public Angle? From
        {
            get => range.HasFromDeg ? UnitsNet.Angle.FromDegrees(range.FromDeg) : null;
            set
            {
                if (value is { } given)
                {
                    range.FromDeg = given.Degrees;
                }
                else
                {
                    range.ClearFromDeg();
                }
            }
        }

        /// <summary>The last angle; null when it is not set.</summary>
        public Angle? To
        {
            get => range.HasToDeg ? UnitsNet.Angle.FromDegrees(range.ToDeg) : null;
            set
            {
                if (value is { } given)
                {
                    range.ToDeg = given.Degrees;
                }
                else
                {
                    range.ClearToDeg();
                }
            }
        }

        /// <summary>The step between them; null when it is not set.</summary>
        public Angle? Step
        {
            get => range.HasStepDeg ? UnitsNet.Angle.FromDegrees(range.StepDeg) : null;
            set
            {
                if (value is { } given)
                {
                    range.StepDeg = given.Degrees;
                }
                else
                {
                    range.ClearStepDeg();
                }
            }
        }
    }

    extension(SuggestMoveRequest request)
    {
        /// <summary>How far a component may be moved; null when it is not set.</summary>
        public Length? LongestMove
        {
            get => request.HasLongestMoveMm ? UnitsNet.Length.FromMillimeters(request.LongestMoveMm) : null;
            set
            {
                if (value is { } given)
                {
                    request.LongestMoveMm = given.Millimeters;
                }
                else
                {
                    request.ClearLongestMoveMm();
                }
            }
        }
    }

    extension(RankedView view)
    {
        /// <summary>Height of the entrance pupil over the table; null of a far camera.</summary>
        public Length? CameraHeight => view.HasCameraHeightMm ? UnitsNet.Length.FromMillimeters(view.CameraHeightMm) : null;

        /// <summary>Depth of field; null without sharpness, and when it reaches to infinity.</summary>
        public Length? SharpDepth => view.HasSharpDepthMm ? UnitsNet.Length.FromMillimeters(view.SharpDepthMm) : null;

        /// <summary>Depth of the dish along the axis.</summary>
        public Length AxisDepth => UnitsNet.Length.FromMillimeters(view.AxisDepthMm);
    }

    extension(ComponentMove move)
    {
        /// <summary>By how much, to the right.</summary>
        public Length Right => UnitsNet.Length.FromMillimeters(move.RightMm);

        /// <summary>By how much, away from the front.</summary>
        public Length Away => UnitsNet.Length.FromMillimeters(move.AwayMm);

        /// <summary>By how much in all.</summary>
        public Length Distance => UnitsNet.Length.FromMillimeters(move.DistanceMm);
    }
}
