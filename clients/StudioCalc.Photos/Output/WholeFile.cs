using System.Security.Cryptography;
using System.Text;

namespace StudioCalc.Photos;

/// <summary>Writes files so that they are whole or not there: under another name first, then renamed. Disposing before
/// <see cref="Keep"/> leaves nothing.</summary>
public sealed class WholeFile : IDisposable
{
    private readonly string _path;
    private readonly string _temporary;
    private bool _isKept;

    /// <summary>Begins a file.</summary>
    /// <param name="path">Where it shall be.</param>
    public WholeFile(string path)
    {
        _path = Path.GetFullPath(path);
        _temporary = Path.Combine(Path.GetDirectoryName(_path)!, $".{Path.GetFileName(_path)}.{RandomNumberGenerator.GetHexString(8, lowercase: true)}.part");
        Text = new(_temporary, new UTF8Encoding(encoderShouldEmitUTF8Identifier: false), new FileStreamOptions { Mode = FileMode.CreateNew, Access = FileAccess.Write, Share = FileShare.None });
    }

    /// <summary>Takes the text, as UTF-8.</summary>
    public StreamWriter Text { get; }

    /// <summary>Puts the file in its place.</summary>
    /// <param name="replace">Whether a file that lies there is replaced.</param>
    /// <exception cref="IOException">A file lies there and is not replaced, or the system refuses.</exception>
    public void Keep(bool replace)
    {
        Text.Flush();
        ((FileStream)Text.BaseStream).Flush(flushToDisk: true);
        Text.Dispose();
        if (replace && !OperatingSystem.IsWindows() && File.Exists(_path))
        {
            File.SetUnixFileMode(_temporary, File.GetUnixFileMode(_path));
        }

        File.Move(_temporary, _path, replace);
        _isKept = true;
    }

    /// <summary>Removes what is not kept.</summary>
    public void Dispose()
    {
        if (!_isKept)
        {
            Text.Dispose();
            File.Delete(_temporary);
        }
    }
}
