namespace StudioCalc.Maths;

/// <summary>Where a face is, which way it faces, and which of its sides is up.</summary>
/// <remarks>
/// <code>
/// r = -k x z,   u = r x -k                                  (4)
/// </code>
/// <para>k: direction that it faces. z: straight up. r, u: its right and its up, seen from before it. A face that looks straight up
/// or down stands as one that came there from the front of the set: u points away from the front for one that looks down,
/// and to the front for one that looks up.</para>
/// </remarks>
public sealed record FaceAxes
{
    /// <summary>Places a face.</summary>
    /// <param name="centre">Its centre.</param>
    /// <param name="aim">The point that it faces.</param>
    /// <param name="rollDeg">Turn about the line between them, counter-clockwise seen from the aim point. [deg]</param>
    /// <exception cref="ArgumentException">The two points are the same.</exception>
    public FaceAxes(Vector centre, Vector aim, double rollDeg = 0)
    {
        if (centre == aim)
        {
            throw new ArgumentException("A face needs a point before it to face.", nameof(aim));
        }

        Centre = centre;
        Facing = (aim - centre).Unit();
        var level = (-Facing).Cross(Vector.Up);
        var right = level.Length > 1e-12 ? level.Unit() : new Vector(-1, 0, 0);
        var up = right.Cross(-Facing);
        var (sin, cos) = Math.SinCos(rollDeg * Math.PI / 180);
        Right = right * cos + up * sin;
        Up = up * cos - right * sin;
    }

    /// <summary>Its centre.</summary>
    public Vector Centre { get; private init; }

    /// <summary>The unit direction that it faces, k.</summary>
    public Vector Facing { get; }

    /// <summary>Its right, r, seen from before it.</summary>
    public Vector Right { get; }

    /// <summary>Its up, u.</summary>
    public Vector Up { get; }

    /// <summary>The same axes about another centre.</summary>
    /// <param name="way">How far it moves. [mm]</param>
    public FaceAxes ShiftedBy(Vector way) => this with { Centre = Centre + way };

    /// <summary>The place of a point of the face.</summary>
    /// <param name="right">To the right of the centre.</param>
    /// <param name="up">Above the centre.</param>
    public Vector At(double right, double up) => Centre + Right * right + Up * up;
}
