using System.Collections.Concurrent;
using StudioCalc.Tests;

namespace StudioCalc.System.Tests;

/// <summary>What this machine has.</summary>
internal static class Machine
{
    private static readonly ConcurrentDictionary<Peer, string?> Reasons = new();

    /// <summary>Why tests with these peers cannot run here, or null when they can.</summary>
    public static string? Lacks(params IEnumerable<Peer> peers) =>
        peers.Select(peer => Reasons.GetOrAdd(peer, ReasonFor)).FirstOrDefault(reason => reason is not null);

    /// <summary>The full name of a program on the search path, or null.</summary>
    public static string? Find(params IEnumerable<string> names) =>
        (from name in names
         from folder in (Environment.GetEnvironmentVariable("PATH") ?? "").Split(Path.PathSeparator)
         let file = Path.Combine(folder, name)
         where File.Exists(file)
         select file).FirstOrDefault();

    /// <summary>The browser to drive.</summary>
    public static string? Browser => Find("chromium", "chromium-browser", "google-chrome");

    // The system's own: a version manager's Python does not see the system's packages.
    public static string Python => "/usr/bin/python3";

    private static string? ReasonFor(Peer peer) => peer switch
    {
        Peer.Node when Find("node", "node.exe") is null => "Needs Node.js 20 or newer.",
        Peer.Node when !File.Exists(RepositoryRoot.At("tests", "StudioCalc.System.Tests", "node", "node_modules", ".package-lock.json")) =>
            "Needs packages: run npm ci in tests/StudioCalc.System.Tests/node.",
        Peer.Curl when Find("curl", "curl.exe") is null => "Needs curl.",
        Peer.Browser when Browser is null => "Needs Chromium.",
        Peer.Python when !HasPython("grpc", "google.protobuf") => "Needs /usr/bin/python3 with grpcio and protobuf (Debian: python3-grpcio, python3-protobuf).",
        Peer.Ephem when !HasPython("ephem") => "Needs /usr/bin/python3 with ephem (Debian: python3-ephem).",
        Peer.ExifTool when Find("exiftool") is null => "Needs exiftool (Debian: libimage-exiftool-perl).",
        Peer.Git when Find("git", "git.exe") is null || !Path.Exists(RepositoryRoot.At(".git")) => "Needs git, in a clone of the repository.",
        _ => null,
    };

    private static bool HasPython(params IEnumerable<string> modules)
    {
        var found = string.Join(" and ", modules.Select(module => $"u.find_spec('{module}')"));
        using var process = File.Exists(Python)
            ? global::System.Diagnostics.Process.Start(Python, ["-c", $"import importlib.util as u, sys; sys.exit(not ({found}))"])
            : null;
        process?.WaitForExit();
        return process?.ExitCode == 0;
    }
}
