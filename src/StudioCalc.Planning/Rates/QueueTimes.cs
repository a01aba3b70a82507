using StudioCalc.Maths;

namespace StudioCalc.Planning;

/// <summary>A queue that has run for long: plates before a station, shots before the set.</summary>
/// <remarks>
/// <code>
/// u = a s / c                                                     (55)
/// w = C s / (c (1 - u))        c servers, exponential times        (56)
/// w = a (s² + v) / (2 (1 - u)) one server, any times               (57)
/// t = w + s     Q = a w     L = a t                                (58)
/// </code>
/// <para>a: arrivals a second, at random. s, v: mean [s] and variance [s²] of the service time. C: the chance to wait, by Erlang's formula;
/// for one server it is u. A day of a dozen dishes is seldom in that state: these are for checks, and for a first look.
/// Source: Erlang (1917); Pollaczek and Khinchine; Little (1961); standard texts, from memory.</para>
/// </remarks>
/// <param name="Utilisation">Share of the time that a server is busy u, below 1.</param>
/// <param name="WaitS">Mean wait w before service. [s]</param>
/// <param name="TimeS">Mean time t from arrival to end of service. [s]</param>
/// <param name="Waiting">Mean number waiting Q.</param>
/// <param name="Present">Mean number waiting or in service L.</param>
public sealed record QueueTimes(double Utilisation, double WaitS, double TimeS, double Waiting, double Present)
{
    /// <summary>Several servers with exponential times (M/M/c; M/M/1 for one); null where they cannot keep up.</summary>
    /// <param name="arrivalsPerS">Arrivals a second a, above 0.</param>
    /// <param name="serviceS">Mean service time s, above 0. [s]</param>
    /// <param name="servers">Servers c, 1 or more.</param>
    /// <param name="trail">Follows the sum.</param>
    public static QueueTimes? Servers<TTrail>(double arrivalsPerS, double serviceS, int servers, ref TTrail trail)
        where TTrail : struct, ITrail
    {
        ArgumentOutOfRangeException.ThrowIfLessThan(servers, 1);
        var (a, s, c, u) = Load(arrivalsPerS, serviceS, servers, ref trail);
        if (u >= 1)
        {
            return null;
        }

        // Erlang's loss by recursion, then the chance to wait.
        var loss = 1.0;
        for (var i = 1; i <= servers; i++)
        {
            loss = a * s * loss / (i + a * s * loss);
        }

        var C = trail.Given("C", loss / (1 - u * (1 - loss)), "", "chance to wait, Erlang's formula");
        return Rest(a, s, u, trail.Let("w", C * s / (c * (1 - u)), "s", "shoot plan (56)"), ref trail);
    }

    /// <summary>One server whose times have any distribution (M/G/1); null where it cannot keep up.</summary>
    /// <param name="arrivalsPerS">Arrivals a second a, above 0.</param>
    /// <param name="serviceS">Mean service time s, above 0. [s]</param>
    /// <param name="variance">Variance of the service time v. [s²]</param>
    /// <param name="trail">Follows the sum.</param>
    public static QueueTimes? OneServer<TTrail>(double arrivalsPerS, double serviceS, double variance, ref TTrail trail)
        where TTrail : struct, ITrail
    {
        var (a, s, _, u) = Load(arrivalsPerS, serviceS, 1, ref trail);
        if (u >= 1)
        {
            return null;
        }

        var v = trail.Given("v", Guard.NotNegative(variance), "s²", "variance of the service time");
        return Rest(a, s, u, trail.Let("w", a * (s * s + v) / (2 * (1 - u)), "s", "shoot plan (57)"), ref trail);
    }

    private static (double A, double S, double C, double U) Load<TTrail>(double arrivalsPerS, double serviceS, int servers, ref TTrail trail)
        where TTrail : struct, ITrail
    {
        trail.Section("queue");
        var a = trail.Given("a", Guard.Positive(arrivalsPerS), "1/s", "arrivals");
        var s = trail.Given("s", Guard.Positive(serviceS), "s", "mean service time");
        var c = trail.Given("c", servers, "", "servers");
        return (a, s, c, trail.Let("u", a * s / c, "", "shoot plan (55)"));
    }

    private static QueueTimes Rest<TTrail>(double a, double s, double u, double w, ref TTrail trail)
        where TTrail : struct, ITrail
    {
        var t = trail.Let("t", w + s, "s", "shoot plan (58)");
        return new(u, w, t, trail.Let("Q", a * w, "", "shoot plan (58)"), trail.Let("L", a * t, "", "shoot plan (58)"));
    }
}
