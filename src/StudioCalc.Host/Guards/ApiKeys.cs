using System.Security.Cryptography;
using System.Text;
using Microsoft.AspNetCore.Authorization;
using StudioCalc.Contracts;

namespace StudioCalc.Host;

/// <summary>Asks for a key where the settings have any: <c>authorization: Bearer &lt;key&gt;</c>.</summary>
internal sealed class ApiKeys(RequestDelegate next, StudioCalcOptions options)
{
    private const string Scheme = "Bearer ";

    private readonly byte[][] _keys = [.. options.Security.ApiKeys.Select(Hash)];

    public Task InvokeAsync(HttpContext context)
    {
        if (_keys.Length == 0 || context.GetEndpoint()?.Metadata.GetMetadata<IAllowAnonymous>() is not null)
        {
            return next(context);
        }

        if (Find(context.Request.Headers.Authorization) is not { } index)
        {
            context.Response.Headers.WWWAuthenticate = Scheme.TrimEnd();
            return Replies.WriteAsync(context, Refusal.Unauthenticated());
        }

        context.Features.Set(new Caller(index));
        return next(context);
    }

    // Every key is compared, each in constant time, so that the time taken tells nothing.
    private int? Find(string? header)
    {
        if (header?.StartsWith(Scheme, StringComparison.OrdinalIgnoreCase) is not true)
        {
            return null;
        }

        var shown = Hash(header[Scheme.Length..]);
        int? found = null;
        for (var i = 0; i < _keys.Length; i++)
        {
            found = CryptographicOperations.FixedTimeEquals(shown, _keys[i]) ? i : found;
        }

        return found;
    }

    private static byte[] Hash(string key) => SHA256.HashData(Encoding.UTF8.GetBytes(key));

    /// <summary>The caller, by the place of its key in the settings.</summary>
    internal sealed record Caller(int KeyIndex);
}
