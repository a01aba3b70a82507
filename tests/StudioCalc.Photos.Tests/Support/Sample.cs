using StudioCalc.Tests;

namespace StudioCalc.Photos.Tests;

/// <summary>Photos in memory and what is read of them.</summary>
internal static class Sample
{
    public static PhotoFile Of(byte[] bytes, string name = "photo.jpg") => new(name, () => new MemoryStream(bytes, writable: false));

    public static PhotoFile Of(ExifFields fields, string name = "photo.jpg") => Of(fields.Jpeg(), name);

    public static PhotoFacts Read(ExifFields fields) => PhotoReader.Read(Of(fields));

    public static IEnumerable<string> Codes(this IEnumerable<PhotoNote> notes) => notes.Select(note => note.Code);

    public static async Task<PhotoAnswer> Evaluate(PhotoFile photo, PhotoOptions? options = null)
    {
        using var client = Client.Embedded.EmbeddedStudioCalc.Create();
        await foreach (var answer in new PhotoEvaluator(client, options ?? new()).EvaluateAsync([photo]))
        {
            return answer;
        }

        throw new InvalidOperationException("No answer came.");
    }

    public static Task<PhotoAnswer> Evaluate(ExifFields fields, PhotoOptions? options = null) => Evaluate(Of(fields), options);
}
