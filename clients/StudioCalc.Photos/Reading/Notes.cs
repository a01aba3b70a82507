namespace StudioCalc.Photos;

/// <summary>Words for what is wrong with a number.</summary>
internal static class Notes
{
    public static void Add(this List<PhotoNote> notes, PhotoSubject subject, PhotoReason reason, string text) => notes.Add(new(subject, reason, text));

    /// <summary>Notes why a number is none.</summary>
    public static void Fault(this List<PhotoNote> notes, PhotoSubject subject, string name, RawValue raw) => notes.Add(new(subject, raw.Fault!.Value, raw.Fault switch
    {
        PhotoReason.Missing => $"The file has no {name}.",
        PhotoReason.ZeroOverZero => $"The {name} is written as 0/0, which is no number.",
        PhotoReason.DivisionByZero => $"The {name} is written as {raw.Written}, a division by zero.",
        PhotoReason.Zero => $"The {name} is written as 0.",
        PhotoReason.Negative => $"The {name} is written as {raw.Written}, below zero.",
        PhotoReason.OutOfRange => $"The {name} is written as {raw.Written}, beyond what is possible.",
        _ => $"The {name} is written as {raw.Written}, not as a number.",
    }));
}
