using Grpc.Core;
using StudioCalc.Maths;
using StudioCalc.Planning;
using StudioCalc.V1;

namespace StudioCalc.Services;

/// <content>QuoteShoot.</content>
public sealed partial class ShootPlanAdapter
{
    private const int UsualDraws = 10_000;
    private const int LeastDraws = 100;
    private const double MostTriesDrawn = 5_000_000;
    private const double MostMeanDayS = 100 * 86400.0;
    private const uint UsualSeed = 1;
    private const long LongDayMs = 12 * 3_600_000;

    private static readonly FieldPath QuoteRoot = FieldPath.Root(QuoteShootRequest.Descriptor);

    /// <inheritdoc/>
    public override Task<QuoteShootResponse> QuoteShoot(QuoteShootRequest request, ServerCallContext context)
    {
        ArgumentNullException.ThrowIfNull(request);
        ArgumentNullException.ThrowIfNull(context);
        if (!request.IncludeWorking)
        {
            var none = default(NoTrail);
            return Task.FromResult(Quote(request, ref none, context.CancellationToken));
        }

        var trail = StepTrail.Start();
        var response = Quote(request, ref trail, context.CancellationToken);
        response.Working.Add(trail);
        return Task.FromResult(response);
    }

    private static QuoteShootResponse Quote<TTrail>(QuoteShootRequest request, ref TTrail trail, CancellationToken cancellation)
        where TTrail : struct, ITrail
    {
        var context = new RequestContext(null);
        var read = new QuoteReader(context, QuoteRoot).Read(request);
        var mean = QuoteMean.Evaluate(read.Input, ref trail);
        var draws = CheckEffort(context, request, read.Input, mean);
        var seed = request.HasSeed ? request.Seed : UsualSeed;
        var quote = Planning.Quote.Draw(read.Input, draws, seed, Environment.ProcessorCount, cancellation);
        var shots = read.Input.Dishes * read.Input.ShotsPerDish;
        var response = new QuoteShootResponse
        {
            Length = quote.LengthMs.ToTimes(quote.MeanMs),
            Contingency = (quote.ContingencyMs / 1000.0).ToDuration(),
            ShotsPerHour = quote.LengthMs.P50.Value == 0 ? 0 : shots * 3_600_000.0 / quote.LengthMs.P50.Value,
            MeanLength = mean.LengthS.ToDuration(),
            Basis = quote.Basis.ToContract(),
            Defaults = { read.Defaults },
            Seed = seed,
            Draws = (uint)draws,
            ModelRevision = ModelRevision.Current,
        };
        if (quote.DishesThatFit is { } fit)
        {
            response.DishesThatFit = (uint)fit;
        }

        response.Advisories.Add(Notes(request, quote, response));
        return response;
    }

    private static int CheckEffort(RequestContext context, QuoteShootRequest request, QuoteInput input, QuoteMean mean)
    {
        var dishes = input.DayHours is null ? input.Dishes : Planning.Quote.MostDishes;
        var most = MostTriesDrawn / (dishes * input.ShotsPerDish * mean.TriesPerShot);
        if (mean.LengthS > MostMeanDayS)
        {
            context.Violations.Add(QuoteRoot[QuoteShootRequest.DishesFieldNumber].ToString(), RefusalReason.OutOfRange,
                "With these times the mean day is longer than 100 days.");
        }
        else if (most < LeastDraws)
        {
            context.Violations.Add(QuoteRoot[QuoteShootRequest.DishesFieldNumber].ToString(), RefusalReason.OutOfRange,
                "Dishes (200 where a day is asked) times shots of a dish times their expected tries must be at most 50000.");
        }
        else if (request.HasDraws && request.Draws > most)
        {
            context.Violations.Add(QuoteRoot[QuoteShootRequest.DrawsFieldNumber].ToString(), RefusalReason.OutOfRange,
                FormattableString.Invariant($"With this many shots and tries at most {Math.Floor(most)}."));
        }

        context.ThrowIfRefused();
        return request.HasDraws ? (int)request.Draws : (int)Math.Min(UsualDraws, most);
    }

    private static IEnumerable<Advisory> Notes(QuoteShootRequest request, Quote quote, QuoteShootResponse response)
    {
        if (quote.Basis == Basis.Assumption)
        {
            yield return Advise.PromiseRestsOnAssumptions("length.p90");
        }

        if (quote.DishesThatFit < (int)request.Dishes)
        {
            yield return Advise.DishesDoNotFit(QuoteRoot[QuoteShootRequest.DishesFieldNumber], request.Dishes, response.DishesThatFit);
        }

        if (quote.LengthMs.P90.Value > LongDayMs)
        {
            yield return Advise.LongDay("length.p90", quote.LengthMs.P90.Value / 1000.0);
        }
    }
}
