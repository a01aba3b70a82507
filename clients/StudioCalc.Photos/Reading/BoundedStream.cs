namespace StudioCalc.Photos;

/// <summary>A file of which no more than a limit is read, and that tells why reading ended.</summary>
internal sealed class BoundedStream(Stream inner, long limit) : Stream
{
    /// <summary>Bytes read so far.</summary>
    public long BytesRead { get; private set; }

    /// <summary>Whether more was asked for than there is.</summary>
    public bool HitEnd { get; private set; }

    /// <summary>Whether more was asked for than the limit allows.</summary>
    public bool HitLimit { get; private set; }

    /// <summary>What the system said when it could not read on.</summary>
    public string? SystemError { get; private set; }

    public override bool CanRead => true;

    public override bool CanSeek => inner.CanSeek;

    public override bool CanWrite => false;

    public override long Length => inner.Length;

    public override long Position
    {
        get => inner.Position;
        set => inner.Position = value;
    }

    public override int Read(byte[] buffer, int offset, int count) => Read(buffer.AsSpan(offset, count));

    public override int Read(Span<byte> buffer)
    {
        if (BytesRead + buffer.Length > limit)
        {
            HitLimit = true;
            throw new IOException("More metadata than is read.");
        }

        int read;
        try
        {
            read = inner.Read(buffer);
        }
        catch (Exception error) when (error is IOException or UnauthorizedAccessException)
        {
            SystemError = error.Message;
            throw;
        }

        HitEnd |= read == 0 && buffer.Length > 0;
        BytesRead += read;
        return read;
    }

    public override int ReadByte()
    {
        Span<byte> one = stackalloc byte[1];
        return Read(one) == 0 ? -1 : one[0];
    }

    public override long Seek(long offset, SeekOrigin origin) => inner.Seek(offset, origin);

    public override void Flush() => inner.Flush();

    public override void SetLength(long value) => throw new NotSupportedException();

    public override void Write(byte[] buffer, int offset, int count) => throw new NotSupportedException();

    protected override void Dispose(bool disposing)
    {
        if (disposing)
        {
            inner.Dispose();
        }

        base.Dispose(disposing);
    }
}
