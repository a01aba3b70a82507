// Calls to make come in as lines of JSON; what became of each goes out as one line.
import { createInterface } from "node:readline";

export async function* jobs() {
  for await (const line of createInterface({ input: process.stdin })) {
    yield JSON.parse(line);
  }
}

export const write = (line) => console.log(JSON.stringify(line));

export const base64 = (bytes) => Buffer.from(bytes).toString("base64");
