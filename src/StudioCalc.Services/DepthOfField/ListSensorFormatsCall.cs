using Grpc.Core;
using StudioCalc.Maths;
using StudioCalc.V1;

namespace StudioCalc.Services;

/// <content>ListSensorFormats.</content>
public sealed partial class DepthOfFieldAdapter
{
    /// <inheritdoc/>
    public override Task<ListSensorFormatsResponse> ListSensorFormats(ListSensorFormatsRequest request, ServerCallContext context) =>
        Task.FromResult(new ListSensorFormatsResponse
        {
            Formats =
            {
                SensorFormats.All.Select(format => new V1.SensorFormat
                {
                    Format = format.Name,
                    WidthMm = format.WidthMm,
                    HeightMm = format.HeightMm,
                    DiagonalMm = format.DiagonalMm,
                    CropFactor = format.CropFactor,
                    SourceKind = V1.SourceKind.Memory,
                    Source = SensorFormats.Source,
                }),
            },
            CatalogueVersion = SensorFormats.Version,
            ModelRevision = ModelRevision.Current,
        });
}
