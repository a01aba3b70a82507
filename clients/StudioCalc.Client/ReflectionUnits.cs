using StudioCalc.V1;
using UnitsNet;

namespace StudioCalc.Client;

/// <summary>Glossy surfaces and what mirrors in them, in any unit.</summary>
public static class ReflectionUnits
{
    extension(EvaluateReflectionsRequest request)
    {
        /// <summary>Distance of a black card from the reflection; null when it is not set.</summary>
        public Length? CardDistance
        {
            get => request.HasCardDistanceMm ? UnitsNet.Length.FromMillimeters(request.CardDistanceMm) : null;
            set
            {
                if (value is { } given)
                {
                    request.CardDistanceMm = given.Millimeters;
                }
                else
                {
                    request.ClearCardDistanceMm();
                }
            }
        }
    }

    extension(FlatGloss surface)
    {
        /// <summary>Width; null when it is not set.</summary>
        public Length? Width
        {
            get => surface.HasWidthMm ? UnitsNet.Length.FromMillimeters(surface.WidthMm) : null;
            set
            {
                if (value is { } given)
                {
                    surface.WidthMm = given.Millimeters;
                }
                else
                {
                    surface.ClearWidthMm();
                }
            }
        }

        /// <summary>Depth; null when it is not set.</summary>
        public Length? Depth
        {
            get => surface.HasDepthMm ? UnitsNet.Length.FromMillimeters(surface.DepthMm) : null;
            set
            {
                if (value is { } given)
                {
                    surface.DepthMm = given.Millimeters;
                }
                else
                {
                    surface.ClearDepthMm();
                }
            }
        }

        /// <summary>How far its slope waves; null when it is not set.</summary>
        public Angle? Wave
        {
            get => surface.HasWaveDeg ? UnitsNet.Angle.FromDegrees(surface.WaveDeg) : null;
            set
            {
                if (value is { } given)
                {
                    surface.WaveDeg = given.Degrees;
                }
                else
                {
                    surface.ClearWaveDeg();
                }
            }
        }
    }

    extension(CylinderGloss surface)
    {
        /// <summary>Diameter; null when it is not set.</summary>
        public Length? Diameter
        {
            get => surface.HasDiameterMm ? UnitsNet.Length.FromMillimeters(surface.DiameterMm) : null;
            set
            {
                if (value is { } given)
                {
                    surface.DiameterMm = given.Millimeters;
                }
                else
                {
                    surface.ClearDiameterMm();
                }
            }
        }

        /// <summary>Height; null when it is not set.</summary>
        public Length? Height
        {
            get => surface.HasHeightMm ? UnitsNet.Length.FromMillimeters(surface.HeightMm) : null;
            set
            {
                if (value is { } given)
                {
                    surface.HeightMm = given.Millimeters;
                }
                else
                {
                    surface.ClearHeightMm();
                }
            }
        }
    }

    extension(DomeGloss surface)
    {
        /// <summary>Diameter; null when it is not set.</summary>
        public Length? Diameter
        {
            get => surface.HasDiameterMm ? UnitsNet.Length.FromMillimeters(surface.DiameterMm) : null;
            set
            {
                if (value is { } given)
                {
                    surface.DiameterMm = given.Millimeters;
                }
                else
                {
                    surface.ClearDiameterMm();
                }
            }
        }
    }

    extension(MirroredBall ball)
    {
        /// <summary>Diameter; null when it is not set.</summary>
        public Length? Diameter
        {
            get => ball.HasDiameterMm ? UnitsNet.Length.FromMillimeters(ball.DiameterMm) : null;
            set
            {
                if (value is { } given)
                {
                    ball.DiameterMm = given.Millimeters;
                }
                else
                {
                    ball.ClearDiameterMm();
                }
            }
        }
    }
}
