using Google.Protobuf.Collections;
using StudioCalc.Maths;
using StudioCalc.V1;

namespace StudioCalc.Services;

/// <summary>Writes a trail as the working of an answer.</summary>
internal static class WorkingWriter
{
    /// <summary>Adds the steps; answer fields get <paramref name="prefix"/>, where the maths does not know its place.</summary>
    public static void Add(this RepeatedField<WorkingStep> working, StepTrail trail, string prefix = "") => working.Add(
        trail.Steps.Select(step => new WorkingStep
        {
            Section = step.Section,
            Symbol = step.Symbol,
            Expression = step.Expression,
            Value = step.Value,
            Unit = step.Unit,
            Source = step.Source,
            AnswerField = step.AnswerField.Length == 0 ? "" : prefix + step.AnswerField,
        }));
}
