namespace StudioCalc.Maths;

/// <summary>The revision of all models in this package. It changes when any number that they give may change.</summary>
public static class ModelRevision
{
    /// <summary>The revision of this build; the changelog lists which numbers changed with each.</summary>
    public static string Current => "1";
}
