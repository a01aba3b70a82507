using System.CommandLine;

namespace StudioCalc.Cli;

/// <summary>The commands that read photos.</summary>
internal static class PhotosCommand
{
    public static Command Of(Terminal terminal) => new("photos", "Numbers from photos that are there: what each says about its settings, and the pace of a shoot.")
    {
        new EvaluatePhotosCommand(terminal).Command,
        new PhotoPaceCommand(terminal).Command,
    };

    /// <summary>The folder that every one of them reads.</summary>
    public static Argument<string> Folder() => new("folder")
    {
        Description = "A folder with photos, read with all folders in it, or one photo. Photos are only read, never changed.",
    };
}
