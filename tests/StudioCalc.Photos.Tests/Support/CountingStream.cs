namespace StudioCalc.Photos.Tests;

/// <summary>A long file of some bytes at its start and others again and again, that counts what is read.</summary>
internal sealed class CountingStream(byte[] start, long length, byte[]? rest = null) : Stream
{
    private readonly byte[] _rest = rest ?? new byte[4096];

    public long BytesRead { get; private set; }

    public override bool CanRead => true;

    public override bool CanSeek => true;

    public override bool CanWrite => false;

    public override long Length => length;

    public override long Position { get; set; }

    public override int Read(byte[] buffer, int offset, int count)
    {
        var read = (int)Math.Min(count, length - Position);
        for (var done = 0; done < read;)
        {
            var part = Position < start.Length ? start.AsSpan((int)Position) : _rest.AsSpan((int)((Position - start.Length) % _rest.Length));
            var step = Math.Min(part.Length, read - done);
            part[..step].CopyTo(buffer.AsSpan(offset + done));
            done += step;
            Position += step;
        }

        BytesRead += read;
        return read;
    }

    public override long Seek(long offset, SeekOrigin origin) => Position = origin switch
    {
        SeekOrigin.Begin => offset,
        SeekOrigin.Current => Position + offset,
        _ => length + offset,
    };

    public override void Flush()
    {
    }

    public override void SetLength(long value) => throw new NotSupportedException();

    public override void Write(byte[] buffer, int offset, int count) => throw new NotSupportedException();
}
