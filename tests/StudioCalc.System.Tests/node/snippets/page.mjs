import { createFileRegistry, fromBinary, fromJson, toJson } from "@bufbuild/protobuf";
import { FileDescriptorSetSchema } from "@bufbuild/protobuf/wkt";
import { createClient } from "@connectrpc/connect";
import { createGrpcWebTransport } from "@connectrpc/connect-web";

export async function balanceFill(baseUrl, json) {
  const set = await fetch("studiocalc.binpb").then((file) => file.arrayBuffer());
  const contract = createFileRegistry(fromBinary(FileDescriptorSetSchema, new Uint8Array(set)));
  const service = contract.getService("studiocalc.v1.LightingRatioService");
  const { input, output } = service.method.balanceFill;
  const client = createClient(service, createGrpcWebTransport({ baseUrl }));
  return toJson(output, await client.balanceFill(fromJson(input, json)));
}
