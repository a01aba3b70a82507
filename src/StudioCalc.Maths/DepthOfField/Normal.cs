using static System.Math;

namespace StudioCalc.Maths;

/// <summary>The standard normal distribution, to about 15 figures in its tails, too.</summary>
/// <remarks>Error function by the rational approximations of W. J. Cody, "Rational Chebyshev approximations for the error function",
/// Mathematics of Computation 23 (1969), with the coefficients of his published routine; half widths by M. J. Wichura,
/// "Algorithm AS 241", Applied Statistics 37 (1988). Coefficients from memory; tests compare both with a library.</remarks>
public static class Normal
{
    private const double InverseRootPi = 0.56418958354775628695;
    private static readonly double RootHalf = Sqrt(0.5);

    /// <summary>Chance of a value below <paramref name="z"/> standard deviations.</summary>
    public static double Below(double z) => ErrorComplement(-z * RootHalf) / 2;

    /// <summary>Chance of a value between two, without loss of figures where both lie in one tail or close together.</summary>
    /// <param name="low">The lower one, in standard deviations; may be infinite.</param>
    /// <param name="high">The higher one, not below <paramref name="low"/>.</param>
    public static double Between(double low, double high) =>
        low >= 0 ? Below(-low) - Below(-high)
        : high <= 0 ? Below(high) - Below(low)
        : (Error(high * RootHalf) + Error(-low * RootHalf)) / 2;

    /// <summary>The half width in standard deviations about the mean that holds a share of all values.</summary>
    /// <param name="share">The share, above 0 and below 1.</param>
    public static double HalfWidth(double share)
    {
        var tail = Guard.Positive(1 - Guard.Positive(share)) / 2;
        var q = share / 2;
        if (q <= 0.425)
        {
            var r = 0.180625 - q * q;
            return q * Ratio(r, MiddleOver, MiddleUnder);
        }

        var root = Sqrt(-Log(tail));
        return root <= 5 ? Ratio(root - 1.6, OuterOver, OuterUnder) : Ratio(root - 5, FarOver, FarUnder);
    }

    private static double Error(double x) => Abs(x) <= 0.46875 ? Inner(x) : x > 0 ? 1 - ErrorComplement(x) : ErrorComplement(-x) - 1;

    private static double ErrorComplement(double x)
    {
        var y = Abs(x);
        if (y <= 0.46875)
        {
            return 1 - Inner(x);
        }

        var upper = y <= 4 ? Ratio(y, CloseOver, CloseUnder) : double.IsInfinity(y) ? 0 : Beyond(y);
        var sixteenths = Truncate(y * 16) / 16;
        var rest = (y - sixteenths) * (y + sixteenths);
        var tail = upper == 0 ? 0 : Exp(-sixteenths * sixteenths) * Exp(-rest) * upper;
        return x > 0 ? tail : 2 - tail;
    }

    private static double Inner(double x) => x * Ratio(x * x, InnerOver, InnerUnder);

    private static double Beyond(double y)
    {
        var inverse = 1 / (y * y);
        return (InverseRootPi - inverse * Ratio(inverse, BeyondOver, BeyondUnder)) / y;
    }

    // Coefficients stand from the lowest power up.
    private static double Ratio(double x, ReadOnlySpan<double> over, ReadOnlySpan<double> under) => Sum(x, over) / Sum(x, under);

    private static double Sum(double x, ReadOnlySpan<double> coefficients)
    {
        var sum = 0.0;
        for (var i = coefficients.Length - 1; i >= 0; i--)
        {
            sum = sum * x + coefficients[i];
        }

        return sum;
    }

    private static ReadOnlySpan<double> InnerOver =>
    [
        3.20937758913846947e03, 3.77485237685302021e02, 1.13864154151050156e02, 3.16112374387056560e00, 1.85777706184603153e-1,
    ];

    private static ReadOnlySpan<double> InnerUnder =>
    [
        2.84423683343917062e03, 1.28261652607737228e03, 2.44024637934444173e02, 2.36012909523441209e01, 1,
    ];

    private static ReadOnlySpan<double> CloseOver =>
    [
        1.23033935479799725e03, 2.05107837782607147e03, 1.71204761263407058e03, 8.81952221241769090e02, 2.98635138197400131e02,
        6.61191906371416295e01, 8.88314979438837594e00, 5.64188496988670089e-1, 2.15311535474403846e-8,
    ];

    private static ReadOnlySpan<double> CloseUnder =>
    [
        1.23033935480374942e03, 3.43936767414372164e03, 4.36261909014324716e03, 3.29079923573345963e03, 1.62138957456669019e03,
        5.37181101862009858e02, 1.17693950891312499e02, 1.57449261107098347e01, 1,
    ];

    private static ReadOnlySpan<double> BeyondOver =>
    [
        6.58749161529837803e-4, 1.60837851487422766e-2, 1.25781726111229246e-1, 3.60344899949804439e-1, 3.05326634961232344e-1,
        1.63153871373020978e-2,
    ];

    private static ReadOnlySpan<double> BeyondUnder =>
    [
        2.33520497626869185e-3, 6.05183413124413191e-2, 5.27905102951428412e-1, 1.87295284992346047e00, 2.56852019228982242e00, 1,
    ];

    private static ReadOnlySpan<double> MiddleOver =>
    [
        3.3871328727963666080e0, 1.3314166789178437745e2, 1.9715909503065514427e3, 1.3731693765509461125e4, 4.5921953931549871457e4,
        6.7265770927008700853e4, 3.3430575583588128105e4, 2.5090809287301226727e3,
    ];

    private static ReadOnlySpan<double> MiddleUnder =>
    [
        1, 4.2313330701600911252e1, 6.8718700749205790830e2, 5.3941960214247511077e3, 2.1213794301586595867e4, 3.9307895800092710610e4,
        2.8729085735721942674e4, 5.2264952788528545610e3,
    ];

    private static ReadOnlySpan<double> OuterOver =>
    [
        1.42343711074968357734e0, 4.63033784615654529590e0, 5.76949722146069140550e0, 3.64784832476320460504e0,
        1.27045825245236838258e0, 2.41780725177450611770e-1, 2.27238449892691845833e-2, 7.74545014278341407640e-4,
    ];

    private static ReadOnlySpan<double> OuterUnder =>
    [
        1, 2.05319162663775882187e0, 1.67638483018380384940e0, 6.89767334985100004550e-1, 1.48103976427480074590e-1,
        1.51986665636164571966e-2, 5.47593808499534494600e-4, 1.05075007164441684324e-9,
    ];

    private static ReadOnlySpan<double> FarOver =>
    [
        6.65790464350110377720e0, 5.46378491116411436990e0, 1.78482653991729133580e0, 2.96560571828504891230e-1,
        2.65321895265761230930e-2, 1.24266094738807843860e-3, 2.71155556874348757815e-5, 2.01033439929228813265e-7,
    ];

    private static ReadOnlySpan<double> FarUnder =>
    [
        1, 5.99832206555887937690e-1, 1.36929880922735805310e-1, 1.48753612908506148525e-2, 7.86869131145613259100e-4,
        1.84631831751005468180e-5, 1.42151175831644588870e-7, 2.04426310338993978564e-15,
    ];
}
