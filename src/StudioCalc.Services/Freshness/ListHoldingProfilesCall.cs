using Grpc.Core;
using StudioCalc.Maths;
using StudioCalc.V1;

namespace StudioCalc.Services;

/// <content>ListHoldingProfiles.</content>
public sealed partial class FreshnessAdapter
{
    /// <inheritdoc/>
    public override Task<ListHoldingProfilesResponse> ListHoldingProfiles(ListHoldingProfilesRequest request, ServerCallContext context) =>
        Task.FromResult(new ListHoldingProfilesResponse
        {
            Profiles = { HoldingProfiles.All.Select(ProfileWriter.Write) },
            CatalogueVersion = HoldingProfiles.Version,
            ModelRevision = ModelRevision.Current,
        });
}
