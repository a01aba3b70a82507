import { credentials, loadPackageDefinition } from "@grpc/grpc-js";
import { loadSync } from "@grpc/proto-loader";
import { readFileSync } from "node:fs";

const contract = loadSync(
  ["studiocalc/v1/lighting_ratio.proto", "google/rpc/status.proto", "google/rpc/error_details.proto"],
  { includeDirs: ["protos", "protos/vendor"], enums: String },
);
const { LightingRatioService } = loadPackageDefinition(contract).studiocalc.v1;
const client = new LightingRatioService(process.env.STUDIOCALC_GRPC ?? "127.0.0.1:8081", credentials.createInsecure());

const balanceFill = (request) =>
  new Promise((resolve, reject) =>
    client.balanceFill(request, { deadline: Date.now() + 5_000 }, (error, answer) => (error ? reject(error) : resolve(answer))),
  );

const request = JSON.parse(readFileSync("docs/examples/balance-fill.json"));
const answer = await balanceFill(request);
for (const { variable, solution } of answer.ways) {
  console.log(variable, solution.aperture.mark, solution.shutterSpeed.mark);
}

try {
  await balanceFill({ ...request, backOverFillStops: 100 });
} catch (error) {
  const status = contract["google.rpc.Status"].deserialize(error.metadata.get("grpc-status-details-bin")[0]);
  for (const { type_url, value } of status.details) {
    console.log(contract[type_url.split("/")[1]].deserialize(value));
  }
}

client.close();
