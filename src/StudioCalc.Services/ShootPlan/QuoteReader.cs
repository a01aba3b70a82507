using StudioCalc.Maths;
using StudioCalc.Planning;
using StudioCalc.V1;

namespace StudioCalc.Services;

/// <summary>A quote as read, with what was taken where the request tells nothing.</summary>
internal sealed record QuoteRead(QuoteInput Input, IReadOnlyList<StatedDefault> Defaults);

/// <summary>Reads quotes.</summary>
internal sealed class QuoteReader(RequestContext context, FieldPath root)
{
    private const double LeastChance = 0.001;
    private const double LeastHoursBetweenBreaks = 0.5;

    private readonly List<StatedDefault> _defaults = [];

    /// <exception cref="Grpc.Core.RpcException">Any field is bad.</exception>
    public QuoteRead Read(QuoteShootRequest request)
    {
        if (!request.HasShotsPerDish)
        {
            _defaults.Add(QuoteTexts.Default("shots_per_dish", "1"));
        }

        var input = new QuoteInput
        {
            Dishes = (int)request.Dishes,
            ShotsPerDish = request.HasShotsPerDish ? (int)request.ShotsPerDish : 1,
            DayHours = request.Day?.ToSeconds() / 3600,
            LoadIn = Time(request.LoadIn, QuoteShootRequest.LoadInFieldNumber, QuoteDefaults.LoadIn),
            FirstSetup = Time(request.FirstSetup, QuoteShootRequest.FirstSetupFieldNumber, QuoteDefaults.FirstSetup),
            Strike = Time(request.Strike, QuoteShootRequest.StrikeFieldNumber, QuoteDefaults.Strike),
            SetupChange = Time(request.SetupChange, QuoteShootRequest.SetupChangeFieldNumber, QuoteDefaults.SetupChange),
            SetupShare = Number(request.SetupShare, QuoteShootRequest.SetupShareFieldNumber, QuoteDefaults.SetupShare, 0, 1),
            PlateWait = Time(request.PlateWait, QuoteShootRequest.PlateWaitFieldNumber, QuoteDefaults.PlateWait),
            Swap = Time(request.Swap, QuoteShootRequest.SwapFieldNumber, QuoteDefaults.Swap),
            Try = Time(request.TryTime, QuoteShootRequest.TryTimeFieldNumber, QuoteDefaults.Try),
            KeeperChance = Number(request.KeepChance, QuoteShootRequest.KeepChanceFieldNumber, QuoteDefaults.KeeperChance, LeastChance, 1),
            MostTries = Number(request.MostTries, QuoteShootRequest.MostTriesFieldNumber, QuoteDefaults.MostTries, 1, 1000, isWhole: true),
            NewPlate = Time(request.NewPlate, QuoteShootRequest.NewPlateFieldNumber, QuoteDefaults.NewPlate),
            Approval = Time(request.Approval, QuoteShootRequest.ApprovalFieldNumber, QuoteDefaults.Approval),
            Break = Time(request.Pause, QuoteShootRequest.PauseFieldNumber, QuoteDefaults.Break),
            HoursBetweenBreaks = Number(
                request.HoursBetweenBreaks, QuoteShootRequest.HoursBetweenBreaksFieldNumber, QuoteDefaults.HoursBetweenBreaks, LeastHoursBetweenBreaks, 1000),
        };
        context.ThrowIfRefused();
        return new(input, _defaults);
    }

    private TimeEstimate Time(QuotedTime? time, int field, TimeEstimate usual)
    {
        var path = root[field];
        if (time is not null)
        {
            return new(context.ReadTime(time.Time, path[QuotedTime.TimeFieldNumber]), time.Basis.ToPlanning());
        }

        _defaults.Add(QuoteTexts.Default(path.ToString(), QuoteTexts.Of(usual.Time)));
        return usual;
    }

    private NumberEstimate Number(QuotedNumber? number, int field, NumberEstimate usual, double least, double most, bool isWhole = false)
    {
        var path = root[field];
        if (number is null)
        {
            _defaults.Add(QuoteTexts.Default(path.ToString(), QuoteTexts.Of(usual.Value)));
            return usual;
        }

        if (number.Value < least || number.Value > most || (isWhole && number.Value != Math.Floor(number.Value)))
        {
            context.Violations.Add(path[QuotedNumber.ValueFieldNumber].ToString(), RefusalReason.OutOfRange,
                FormattableString.Invariant($"Must be a {(isWhole ? "whole " : "")}number from {least} to {most}."));
        }

        return new(number.Value, number.Basis.ToPlanning());
    }
}
