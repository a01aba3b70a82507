namespace StudioCalc.Maths;

/// <summary>What the parts of a view's score weigh, each not negative.</summary>
/// <param name="MainInFront">The main component lies in front of the others.</param>
/// <param name="MainLarge">The main component is the largest in the frame.</param>
/// <param name="ComponentsShow">Components show, each by its importance.</param>
/// <param name="InsidesOpen">Insides of vessels are open to the lens.</param>
/// <param name="DepthFits">The depth of the dish fits the depth of field.</param>
public readonly record struct ViewWeights(
    double MainInFront, double MainLarge, double ComponentsShow, double InsidesOpen, double DepthFits)
{
    /// <summary>All of them together.</summary>
    public double Total => MainInFront + MainLarge + ComponentsShow + InsidesOpen + DepthFits;
}
