using System.Runtime.InteropServices;
using StudioCalc.Maths;

namespace StudioCalc.Planning;

/// <summary>The tries of one shot in one replication, drawn as if nothing stopped them.</summary>
[StructLayout(LayoutKind.Auto)]
internal readonly ref struct ShotTries
{
    private const uint TryPart = 4u << 24;

    // Whether a try gives a keeper stands where no time looks for its draws.
    private const uint KeeperDraw = uint.MaxValue;

    private readonly ModelShot _shot;
    private readonly (uint, uint) _key;
    private readonly uint _replication;
    private readonly uint _what;
    private readonly int _tries;
    private readonly int _keepers;

    private ShotTries(ModelShot shot, (uint, uint) key, uint replication, uint what)
    {
        (_shot, _key, _replication, _what) = (shot, key, replication, what);
        var wanted = shot.Odds?.Keepers ?? 1;
        var most = shot.Odds?.MostTries ?? 1;
        do
        {
            TimeMs += Time(_tries);
            _keepers += Keeps(_tries) ? 1 : 0;
            _tries++;
        }
        while (_keepers < wanted && _tries < most);
        IsFinished = _keepers >= wanted;
    }

    /// <summary>Their time. [ms]</summary>
    public long TimeMs { get; }

    /// <summary>Whether they finish the shot.</summary>
    public bool IsFinished { get; }

    /// <summary>Draws them.</summary>
    public static ShotTries Draw(ModelShot shot, (uint, uint) key, uint replication, uint what) => new(shot, key, replication, what);

    /// <summary>Frames and keepers of the tries that end within a time.</summary>
    public (int Frames, int Keepers) Within(long timeMs)
    {
        var frames = _shot.Odds?.FramesPerTry ?? 1;
        if (timeMs >= TimeMs)
        {
            return (_tries * frames, _keepers);
        }

        var (tries, keepers) = (0, 0);
        for (var left = timeMs - Time(0); left >= 0; left -= Time(tries))
        {
            keepers += Keeps(tries) ? 1 : 0;
            tries++;
        }

        return (tries * frames, keepers);
    }

    private long Time(int attempt) => (_shot.Odds?.Try ?? _shot.Time) is { } time
        ? time.DrawMs(_key, _replication, _what, TryPart | (uint)attempt)
        : _shot.Shot.ShootMs;

    private bool Keeps(int attempt) => _shot.Odds is not { } odds
        || odds.KeeperChance >= 1
        || Philox.Uniform(_key, (_replication, _what, KeeperDraw, TryPart | (uint)attempt)).First < odds.KeeperChance;
}
