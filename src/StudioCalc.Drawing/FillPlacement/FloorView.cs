using StudioCalc.V1;

namespace StudioCalc.Drawing;

/// <summary>One of the two ways in which a floor sketch is looked at.</summary>
/// <param name="Caption">What it shows.</param>
/// <param name="Across">What runs to the right.</param>
/// <param name="Along">What runs up.</param>
internal sealed record FloorView(string Caption, Func<PointAnswer, double> Across, Func<PointAnswer, double> Along)
{
    public static FloorView Plan { get; } = new("From above, front of the set below", point => point.XMm, point => point.YMm);

    public static FloorView Side { get; } = new("From the right, front of the set on the left", point => point.YMm, point => point.ZMm);

    public bool IsPlan => this == Plan;

    public (double X, double Y) Of(PointAnswer point) => (Across(point), Along(point));

    public (double X, double Y) Of(Point point) => Of(new PointAnswer { XMm = point.XMm, YMm = point.YMm, ZMm = point.ZMm });

    public (double X, double Y) Of(double x, double y, double z) => Of(new PointAnswer { XMm = x, YMm = y, ZMm = z });
}
