using static System.Math;

namespace StudioCalc.Maths;

/// <summary>Bessel functions of the first kind, orders 0 and 1, by backward recurrence (Miller).</summary>
internal static class Bessel
{
    public static double J0(double x) => Both(x).J0;

    public static double J1(double x) => Both(x).J1;

    /// <summary>The n-th zero of J0, counted from 1.</summary>
    public static double ZeroOfJ0(int n) => Zero(McMahon((n - 0.25) * PI, 0), x => Both(x) is var (j0, j1) ? j0 / -j1 : 0);

    /// <summary>The n-th zero of J1 above 0, counted from 1.</summary>
    public static double ZeroOfJ1(int n) => Zero(McMahon((n + 0.25) * PI, 4), x => Both(x) is var (j0, j1) ? j1 / (j0 - j1 / x) : 0);

    private static (double J0, double J1) Both(double x)
    {
        if (Abs(x) < 1e-8)
        {
            return (1, x / 2);
        }

        var start = 2 * ((int)(Abs(x) + 16 * Cbrt(Abs(x) + 1) + 12) / 2);
        var (above, here, sum) = (0.0, 1e-300, 0.0);
        for (var n = start; n > 0; n--)
        {
            if (n % 2 == 0)
            {
                sum += 2 * here;
            }

            (above, here) = (here, 2 * n / x * here - above);
            if (Abs(here) > 1e200)
            {
                (above, here, sum) = (above * 1e-200, here * 1e-200, sum * 1e-200);
            }
        }

        sum += here;
        return (here / sum, above / sum);
    }

    private static double McMahon(double beta, double mu) => beta - (mu - 1) / (8 * beta);

    private static double Zero(double near, Func<double, double> step)
    {
        for (var i = 0; i < 6; i++)
        {
            near -= step(near);
        }

        return near;
    }
}
