namespace StudioCalc.System.Tests;

/// <summary>What a test needs that is no part of the .NET SDK.</summary>
public enum Peer
{
    /// <summary>Node.js, with the packages of the folder <c>node</c>.</summary>
    Node,

    /// <summary>curl.</summary>
    Curl,

    /// <summary>A browser that puppeteer-core can drive.</summary>
    Browser,

    /// <summary>Python with its gRPC package.</summary>
    Python,

    /// <summary>ExifTool, which reads photos.</summary>
    ExifTool,

    /// <summary>Python's ephem, which knows where the sun stands.</summary>
    Ephem,

    /// <summary>git, in a clone.</summary>
    Git,
}
