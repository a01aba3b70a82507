namespace StudioCalc.Drawing;

/// <summary>A box with sides along the axes, between two places across and two up or down.</summary>
internal readonly record struct Bounds(double Left, double Low, double Right, double High)
{
    public double Width => Right - Left;

    public double Height => High - Low;

    public double MiddleX => (Left + Right) / 2;

    public double MiddleY => (Low + High) / 2;

    /// <summary>The box around all of them.</summary>
    public static Bounds Around(IEnumerable<Bounds> boxes)
    {
        var all = boxes.ToList();
        return new(all.Min(box => box.Left), all.Min(box => box.Low), all.Max(box => box.Right), all.Max(box => box.High));
    }

    public bool Overlaps(Bounds other) => Left < other.Right && other.Left < Right && Low < other.High && other.Low < High;
}
