// Makes calls over gRPC with @grpc/grpc-js. Requests and answers pass through the objects that a caller works with.
import { Client, Metadata, credentials } from "@grpc/grpc-js";
import { base64, jobs, write } from "../jobs.mjs";
import { call } from "./contract.mjs";
import { refusal } from "./refusal.mjs";

const client = new Client(process.argv[2], credentials.createInsecure());
const same = (bytes) => bytes;

for await (const { path, bytes, headers, deadlineMs } of jobs()) {
  const { requestSerialize = same, requestDeserialize = same, responseSerialize = same, responseDeserialize = same } = call(path) ?? {};
  const metadata = new Metadata();
  Object.entries(headers).forEach(([name, value]) => metadata.set(name, value));
  const options = deadlineMs === null ? {} : { deadline: Date.now() + deadlineMs };
  const request = requestDeserialize(Buffer.from(bytes, "base64"));
  await new Promise((done) =>
    client.makeUnaryRequest(path, requestSerialize, responseDeserialize, request, metadata, options, (error, answer) => {
      write(error ? { refusal: refusal(error) } : { answer: base64(responseSerialize(answer)) });
      done();
    }),
  );
}

client.close();
