using static System.Math;

namespace StudioCalc.Maths;

/// <summary>A point of a glossy surface that a camera sees.</summary>
/// <param name="Place">Where it is.</param>
/// <param name="Normal">The unit direction that the surface faces there.</param>
/// <param name="Weight">How large an equal cell about it looks, up to one factor for the whole surface.</param>
public readonly record struct MirrorPoint(Vector Place, Vector Normal, double Weight);

/// <summary>The shape of a glossy surface, divided into a grid of cells as a camera sees it.</summary>
public abstract record MirrorShape
{
    /// <summary>How far the slope waves from that of the shape. [deg]</summary>
    public virtual double WaveDeg => 0;

    /// <summary>The point at a place of the grid; null where the surface has none, or the camera does not see it.</summary>
    /// <param name="camera">Where the camera is.</param>
    /// <param name="across">From 0 to 1.</param>
    /// <param name="along">From 0 to 1.</param>
    public abstract MirrorPoint? At(Vector camera, double across, double along);

    /// <summary>The same, also just beside the surface where it may be thought to go on.</summary>
    internal virtual MirrorPoint? Around(Vector camera, double across, double along) => At(camera, across, along);

    /// <summary>The point in its middle as the camera sees it; null when the camera does not see it.</summary>
    public abstract MirrorPoint? Middle(Vector camera);

    /// <summary>The point of the surface below or above a place near it.</summary>
    public abstract Vector Nearest(Vector place);

    /// <summary>A point as the camera sees it, in cells of equal area; null from behind.</summary>
    protected static MirrorPoint? Seen(Vector place, Vector normal, Vector camera)
    {
        var way = camera - place;
        var facing = way.Dot(normal);
        return facing > 0 ? new(place, normal, facing / Pow(way.Dot(way), 1.5)) : null;
    }
}

/// <summary>A flat surface.</summary>
/// <param name="Axes">Where it lies, and which way it faces.</param>
/// <param name="WidthMm">Its width, above 0. [mm]</param>
/// <param name="DepthMm">Its depth, above 0. [mm]</param>
/// <param name="IsOval">Whether it is oval rather than rectangular.</param>
/// <param name="Wave">How far its slope waves. [deg]</param>
public sealed record MirrorFlat(FaceAxes Axes, double WidthMm, double DepthMm, bool IsOval = false, double Wave = 0) : MirrorShape
{
    /// <inheritdoc/>
    public override double WaveDeg => Wave;

    /// <inheritdoc/>
    public override MirrorPoint? At(Vector camera, double across, double along)
    {
        var (x, y) = (2 * across - 1, 2 * along - 1);
        return IsOval && x * x + y * y > 1 ? null : Around(camera, across, along);
    }

    /// <inheritdoc/>
    internal override MirrorPoint? Around(Vector camera, double across, double along) =>
        Seen(Axes.At((across - 0.5) * WidthMm, (along - 0.5) * DepthMm), Axes.Facing, camera);

    /// <inheritdoc/>
    public override MirrorPoint? Middle(Vector camera) => Seen(Axes.Centre, Axes.Facing, camera);

    /// <inheritdoc/>
    public override Vector Nearest(Vector place) => place - Axes.Facing * (place - Axes.Centre).Dot(Axes.Facing);
}

/// <summary>The side of an upright cylinder.</summary>
/// <param name="Base">Middle of its base.</param>
/// <param name="DiameterMm">Its diameter, above 0. [mm]</param>
/// <param name="HeightMm">Its height, above 0. [mm]</param>
public sealed record MirrorCylinder(Vector Base, double DiameterMm, double HeightMm) : MirrorShape
{
    /// <inheritdoc/>
    public override MirrorPoint? At(Vector camera, double across, double along)
    {
        var way = Level(camera);
        var radius = DiameterMm / 2;
        if (way.Length <= radius)
        {
            return null;
        }

        // Only the part that the camera sees is divided.
        var angle = Atan2(way.Y, way.X) + (2 * across - 1) * Acos(radius / way.Length);
        var normal = new Vector(Cos(angle), Sin(angle), 0);
        return Seen(Base + normal * radius + Vector.Up * (along * HeightMm), normal, camera);
    }

    /// <inheritdoc/>
    public override MirrorPoint? Middle(Vector camera) => At(camera, 0.5, 0.5);

    /// <inheritdoc/>
    public override Vector Nearest(Vector place)
    {
        var way = Level(place);
        return way.Length > 0 ? Base + way.Unit() * (DiameterMm / 2) + Vector.Up * Clamp(place.Z - Base.Z, 0, HeightMm) : place;
    }

    private Vector Level(Vector place) => new(place.X - Base.X, place.Y - Base.Y, 0);
}

/// <summary>The upper half of a ball.</summary>
/// <param name="Base">Middle of its base.</param>
/// <param name="DiameterMm">Its diameter, above 0. [mm]</param>
public sealed record MirrorDome(Vector Base, double DiameterMm) : MirrorShape
{
    /// <inheritdoc/>
    public override MirrorPoint? At(Vector camera, double across, double along)
    {
        var (way, radius) = (Base - camera, DiameterMm / 2);
        var distance = way.Length;
        if (distance <= radius)
        {
            return null;
        }

        // A regular grid in the picture, over the disc as which the ball shows.
        var axes = new FaceAxes(camera, Base);
        var half = radius / Sqrt(distance * distance - radius * radius);
        var (x, y) = ((2 * across - 1) * half, (2 * along - 1) * half);
        var line = (axes.Facing + axes.Right * x + axes.Up * y).Unit();
        var near = line.Dot(way);
        var root = near * near - distance * distance + radius * radius;
        if (x * x + y * y >= half * half || root <= 0)
        {
            return null;
        }

        var place = camera + line * (near - Sqrt(root));
        return place.Z >= Base.Z ? new(place, (place - Base) * (1 / radius), Pow(1 + x * x + y * y, -1.5)) : null;
    }

    /// <inheritdoc/>
    public override MirrorPoint? Middle(Vector camera)
    {
        var way = camera - Base;
        var facing = way.Z >= 0 ? way : new Vector(way.X, way.Y, 0);
        if (facing.Length <= DiameterMm / 2)
        {
            return null;
        }

        var normal = facing.Unit();
        return Seen(Base + normal * (DiameterMm / 2), normal, camera);
    }

    /// <inheritdoc/>
    public override Vector Nearest(Vector place)
    {
        var way = new Vector(place.X - Base.X, place.Y - Base.Y, Max(0, place.Z - Base.Z));
        return way.Length > 0 ? Base + way.Unit() * (DiameterMm / 2) : place;
    }
}
