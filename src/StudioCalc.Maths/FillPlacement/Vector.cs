namespace StudioCalc.Maths;

/// <summary>A place or a direction on the set.</summary>
/// <param name="X">To the right, seen from the front.</param>
/// <param name="Y">Away from the front.</param>
/// <param name="Z">Up.</param>
public readonly record struct Vector(double X, double Y, double Z)
{
    /// <summary>Straight up.</summary>
    public static Vector Up { get; } = new(0, 0, 1);

    /// <summary>Its length.</summary>
    public double Length => Math.Sqrt(Dot(this));

    /// <summary>The direction from azimuth and elevation: azimuth 0 is the front, 90 the right; elevation 90 is up.</summary>
    /// <param name="azimuthDeg">Azimuth. [deg]</param>
    /// <param name="elevationDeg">Elevation. [deg]</param>
    public static Vector Towards(double azimuthDeg, double elevationDeg)
    {
        var (sinA, cosA) = Math.SinCos(azimuthDeg * Math.PI / 180);
        var (sinE, cosE) = Math.SinCos(elevationDeg * Math.PI / 180);
        return new(sinA * cosE, -cosA * cosE, sinE);
    }

    /// <summary>Their scalar product.</summary>
    public double Dot(Vector other) => X * other.X + Y * other.Y + Z * other.Z;

    /// <summary>Their vector product.</summary>
    public Vector Cross(Vector other) =>
        new(Y * other.Z - Z * other.Y, Z * other.X - X * other.Z, X * other.Y - Y * other.X);

    /// <summary>The same direction with length 1. Not for a vector without length.</summary>
    public Vector Unit() => this * (1 / Length);

    /// <summary>The sum of two vectors.</summary>
    public static Vector operator +(Vector left, Vector right) => new(left.X + right.X, left.Y + right.Y, left.Z + right.Z);

    /// <summary>The way from the right one to the left one.</summary>
    public static Vector operator -(Vector left, Vector right) => new(left.X - right.X, left.Y - right.Y, left.Z - right.Z);

    /// <summary>The opposite direction.</summary>
    public static Vector operator -(Vector vector) => new(-vector.X, -vector.Y, -vector.Z);

    /// <summary>A vector made longer or shorter.</summary>
    public static Vector operator *(Vector vector, double factor) => new(vector.X * factor, vector.Y * factor, vector.Z * factor);
}
