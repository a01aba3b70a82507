import { createFileRegistry, fromBinary, fromJson, toJson } from "@bufbuild/protobuf";
import { FileDescriptorSetSchema } from "@bufbuild/protobuf/wkt";
import { ConnectError, createClient } from "@connectrpc/connect";
import { createGrpcTransport } from "@connectrpc/connect-node";
import { readFileSync } from "node:fs";

const contract = createFileRegistry(fromBinary(FileDescriptorSetSchema, readFileSync("artifacts/studiocalc.binpb")));
const service = contract.getService("studiocalc.v1.LightingRatioService");
const transport = createGrpcTransport({ baseUrl: process.env.STUDIOCALC_GRPC_URL ?? "http://127.0.0.1:8081" });
const client = createClient(service, transport);

const { input, output } = service.method.balanceFill;
const request = fromJson(input, JSON.parse(readFileSync("docs/examples/balance-fill.json")));
const answer = await client.balanceFill(request, { timeoutMs: 5_000 });
for (const { variable, solution } of toJson(output, answer).ways) {
  console.log(variable, solution.aperture.mark, solution.shutterSpeed.mark);
}

try {
  await client.balanceFill({ ...request, backOverFillStops: 100 });
} catch (error) {
  const [bad] = ConnectError.from(error).findDetails(contract.getMessage("google.rpc.BadRequest"));
  console.log(bad.fieldViolations.map(({ field, reason, description }) => ({ field, reason, description })));
}

process.exit();
