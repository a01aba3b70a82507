// The contract as @grpc/proto-loader reads it from the repository's .proto files.
import { loadSync } from "@grpc/proto-loader";
import { readdirSync } from "node:fs";
import { fileURLToPath } from "node:url";

const protos = fileURLToPath(new URL("../../../../protos", import.meta.url));
const files = readdirSync(`${protos}/studiocalc/v1`).map((name) => `studiocalc/v1/${name}`);

const definitions = loadSync([...files, "google/rpc/status.proto", "google/rpc/error_details.proto"], {
  includeDirs: [protos, `${protos}/vendor`],
  enums: String,
  longs: String,
});

export const message = (name) => definitions[name];

const calls = Object.values(definitions).flatMap((service) => Object.values(service).filter((call) => call?.path));

export const call = (path) => calls.find((one) => one.path === path);
