using StudioCalc.Maths;
using static System.Math;

namespace StudioCalc.Planning;

/// <summary>What is photographed, kept and sent.</summary>
public sealed record HandoverInput
{
    /// <summary>Frames.</summary>
    public required int Frames { get; init; }

    /// <summary>Size of a frame, raw file and companions together, above 0. [MB, 10^6 bytes]</summary>
    public required double FrameMb { get; init; }

    /// <summary>Size of a card, above 0. [GB, 10^9 bytes]</summary>
    public required double CardGb { get; init; }

    /// <summary>Share of a card that is filled, above 0 and not above 1.</summary>
    public double CardFillShare { get; init; } = 1;

    /// <summary>Backup copies, 1 or more.</summary>
    public required int Copies { get; init; }

    /// <summary>Copying rate, above 0. [MB/s]</summary>
    public required double CopyMbPerS { get; init; }

    /// <summary>Whether all copies are written at once, each at the full rate.</summary>
    public bool CopiesSideBySide { get; init; }

    /// <summary>What is sent; 0 for nothing. [MB]</summary>
    public double UploadMb { get; init; }

    /// <summary>Rate of the line, above 0. [Mbit/s]</summary>
    public double UploadMbitPerS { get; init; } = 10;
}

/// <summary>Cards and times of a handover.</summary>
/// <remarks>
/// <code>
/// each = floor(1000 G f / b)          frames to a card             (90)
/// cards = ceil(N / each)                                          (91)
/// data = N b                          in MB                       (92)
/// backup = k data / v                 k copies; 1 if side by side (93)
/// upload = 8 u / r                                                (94)
/// </code>
/// <para>N: frames of b MB. G: a card in GB, filled to the share f. v: MB/s. u: MB to send over r Mbit/s. 1 GB is 1000 MB, as on a card's
/// label. Rates are those sustained, not those on the label. Source: counting.</para>
/// </remarks>
/// <param name="FramesPerCard">Frames to a card.</param>
/// <param name="Cards">Cards; null where a card holds no frame.</param>
/// <param name="DataMb">All frames once. [MB]</param>
/// <param name="BackupS">Time for the copies. [s]</param>
/// <param name="UploadS">Time to send. [s]</param>
public sealed record HandoverPlan(int FramesPerCard, int? Cards, double DataMb, double BackupS, double UploadS)
{
    /// <summary>Evaluates a handover.</summary>
    /// <param name="input">Frames, cards and rates.</param>
    /// <param name="trail">Follows the sum.</param>
    public static HandoverPlan Evaluate<TTrail>(HandoverInput input, ref TTrail trail)
        where TTrail : struct, ITrail
    {
        ArgumentNullException.ThrowIfNull(input);
        trail.Section("handover");
        var N = trail.Given("N", Guard.NotNegative(input.Frames), "", "frames");
        var b = trail.Given("b", Guard.Positive(input.FrameMb), "MB", "size of a frame");
        var G = trail.Given("G", Guard.Positive(input.CardGb), "GB", "size of a card");
        var f = trail.Given("f", Guard.Positive(Binomial.Share(input.CardFillShare)), "", "share of a card that is filled");
        var each = trail.Let("each", Floor(1000 * G * f / b + 0.000001), "", "shoot plan (90)", "frames_per_card");
        int? cards = each < 1 ? null : (int)trail.Let("cards", Ceiling(N / each), "", "shoot plan (91)", "cards");
        var data = trail.Let("data", N * b, "MB", "shoot plan (92)", "data_mb");
        var k = trail.Given("k", input.CopiesSideBySide ? Min(1, input.Copies) : Guard.NotNegative(input.Copies), "", "copies one after another");
        var v = trail.Given("v", Guard.Positive(input.CopyMbPerS), "MB/s", "copying rate");
        var backup = trail.Let("backup", k * data / v, "s", "shoot plan (93)", "backup");
        var u = trail.Given("u", Guard.NotNegative(input.UploadMb), "MB", "to be sent");
        var r = trail.Given("r", Guard.Positive(input.UploadMbitPerS), "Mbit/s", "rate of the line");
        return new((int)Min(each, int.MaxValue), cards, data, backup, trail.Let("upload", 8 * u / r, "s", "shoot plan (94)", "upload"));
    }
}
