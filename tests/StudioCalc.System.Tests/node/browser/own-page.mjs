// Opens a page of another origin, made of nothing but files, and has it call the host over gRPC-Web.
import { readFileSync } from "node:fs";
import { createServer } from "node:http";
import { extname } from "node:path";
import { fileURLToPath } from "node:url";
import { write } from "../jobs.mjs";
import { start } from "./browser.mjs";

const [executablePath, origin, host, descriptorSet, request] = process.argv.slice(2);
const folder = fileURLToPath(new URL("..", import.meta.url));

const esm = (name, file = "index.js") => `/node_modules/${name}/dist/esm/${file}`;
const imports = {
  "@bufbuild/protobuf": esm("@bufbuild/protobuf"),
  "@connectrpc/connect": esm("@connectrpc/connect"),
  "@connectrpc/connect-web": esm("@connectrpc/connect-web"),
};
for (const part of ["codegenv2", "reflect", "wire", "wkt"]) {
  imports[`@bufbuild/protobuf/${part}`] = esm("@bufbuild/protobuf", `${part}/index.js`);
}
for (const part of ["protocol", "protocol-connect", "protocol-grpc-web"]) {
  imports[`@connectrpc/connect/${part}`] = esm("@connectrpc/connect", `${part}/index.js`);
}

const types = { ".js": "text/javascript", ".mjs": "text/javascript", ".binpb": "application/octet-stream" };
const page = `<!doctype html><link rel="icon" href="data:,"><script type="importmap">${JSON.stringify({ imports })}</script>`;

const server = createServer((asked, reply) => {
  const path = new URL(asked.url, origin).pathname;
  if (path === "/") {
    reply.setHeader("content-type", "text/html").end(page);
  } else {
    const name = path === "/studiocalc.binpb" ? descriptorSet : folder + path.slice(1);
    reply.setHeader("content-type", types[extname(name)]).end(readFileSync(name));
  }
}).listen(new URL(origin).port, "127.0.0.1");

const browser = await start(executablePath);
try {
  const tab = await browser.newPage();
  await tab.goto(origin);
  const outcome = await tab.evaluate(
    async (baseUrl, json) => {
      const { balanceFill } = await import("/snippets/page.mjs");
      try {
        return { answer: await balanceFill(baseUrl, json) };
      } catch (error) {
        return { error: String(error) };
      }
    },
    host,
    JSON.parse(readFileSync(request)),
  );
  write(outcome);
} finally {
  await browser.close();
  server.close();
}
