using StudioCalc.Planning;
using StudioCalc.V1;

namespace StudioCalc.Services;

/// <summary>What estimates rest on, between planning and the contract.</summary>
internal static class EstimateBases
{
    public static Basis ToPlanning(this EstimateBasis basis) => basis switch
    {
        EstimateBasis.Measured => Basis.Measured,
        EstimateBasis.StudioHistory => Basis.StudioHistory,
        _ => Basis.Assumption,
    };

    public static EstimateBasis ToContract(this Basis basis) => basis switch
    {
        Basis.Measured => EstimateBasis.Measured,
        Basis.StudioHistory => EstimateBasis.StudioHistory,
        _ => EstimateBasis.Assumption,
    };
}
