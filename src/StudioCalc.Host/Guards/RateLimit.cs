using System.Globalization;
using System.Threading.RateLimiting;
using Microsoft.AspNetCore.Authorization;
using StudioCalc.Contracts;

namespace StudioCalc.Host;

/// <summary>Limits calls a second, for each key or, where no key is asked for, for each remote address. Documentation is no call.</summary>
internal static class RateLimit
{
    private static readonly TimeSpan Second = TimeSpan.FromSeconds(1);

    public static void Add(IServiceCollection services, StudioCalcOptions.LimitOptions limits)
    {
        if (limits.CallsPerSecond == 0)
        {
            return;
        }

        services.AddRateLimiter(limiter =>
        {
            limiter.GlobalLimiter = PartitionedRateLimiter.Create<HttpContext, string>(context =>
                context.GetEndpoint()?.Metadata is { } known
                    && (known.GetMetadata<IAllowAnonymous>() is not null || known.GetMetadata<DocsDoor.Mark>() is not null)
                    ? RateLimitPartition.GetNoLimiter("")
                    : RateLimitPartition.GetTokenBucketLimiter(CallerOf(context), _ => new()
                    {
                        TokenLimit = limits.CallsPerSecond,
                        TokensPerPeriod = limits.CallsPerSecond,
                        ReplenishmentPeriod = Second,
                        AutoReplenishment = true,
                    }));
            limiter.OnRejected = (rejected, _) => new(Replies.WriteAsync(rejected.HttpContext, Refusal.RateExceeded(
                rejected.Lease.TryGetMetadata(MetadataName.RetryAfter, out var wait) ? wait : Second)));
        });
    }

    public static void Use(IApplicationBuilder app, StudioCalcOptions.LimitOptions limits)
    {
        if (limits.CallsPerSecond > 0)
        {
            app.UseRateLimiter();
        }
    }

    private static string CallerOf(HttpContext context) => context.Features.Get<ApiKeys.Caller>() is { } caller
        ? "key " + caller.KeyIndex.ToString(CultureInfo.InvariantCulture)
        : "address " + context.Connection.RemoteIpAddress;
}
