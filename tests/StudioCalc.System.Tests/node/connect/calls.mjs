// Makes calls with @connectrpc/connect-node over gRPC or gRPC-Web, from the descriptor set that buf builds.
import { createFileRegistry, fromBinary, fromJson, toBinary } from "@bufbuild/protobuf";
import { FileDescriptorSetSchema } from "@bufbuild/protobuf/wkt";
import { createClient } from "@connectrpc/connect";
import { createGrpcTransport, createGrpcWebTransport } from "@connectrpc/connect-node";
import { readFileSync } from "node:fs";
import { base64, jobs, write } from "../jobs.mjs";
import { refusal } from "./refusal.mjs";

const [way, baseUrl, descriptorSet] = process.argv.slice(2);
const registry = createFileRegistry(fromBinary(FileDescriptorSetSchema, readFileSync(descriptorSet)));
const transport = way === "grpc" ? createGrpcTransport({ baseUrl }) : createGrpcWebTransport({ baseUrl, httpVersion: "1.1" });

for await (const { path, json, headers, deadlineMs } of jobs()) {
  const [, serviceName, methodName] = path.split("/");
  const service = registry.getService(serviceName);
  const method = service.methods.find(({ name }) => name === methodName);
  const options = { headers, ...(deadlineMs === null ? {} : { timeoutMs: deadlineMs }) };
  try {
    const request = fromJson(method.input, JSON.parse(json), { registry });
    const answer = await createClient(service, transport)[method.localName](request, options);
    write({ answer: base64(toBinary(method.output, answer)) });
  } catch (error) {
    write({ refusal: refusal(error, registry) });
  }
}

// An idle HTTP/2 connection would keep the process. What is written goes out first: to a pipe it does so later.
process.stdout.write("", () => process.exit());
