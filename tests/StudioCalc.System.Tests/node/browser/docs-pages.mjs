// Reads the host's documentation as a newcomer does: opens the page, tries one call, and goes on to the contract.
import { mkdirSync } from "node:fs";
import { write } from "../jobs.mjs";
import { start } from "./browser.mjs";

const [executablePath, host, pictures] = process.argv.slice(2);
const call = "/v1/lightingRatio:balanceFill";
const noticed = { complaints: [], elsewhere: [] };

function watch(tab) {
  tab.on("console", (message) => ["error", "warn"].includes(message.type()) && noticed.complaints.push(message.text()));
  tab.on("pageerror", (error) => noticed.complaints.push(String(error)));
  tab.on("requestfailed", (asked) => noticed.complaints.push(`${asked.url()} ${asked.failure().errorText}`));
  tab.on("request", (asked) => {
    const url = new URL(asked.url());
    if (url.origin !== host && url.protocol !== "data:") {
      noticed.elsewhere.push(asked.url());
      return asked.abort();
    }
    return asked.continue();
  });
  return tab.setRequestInterception(true);
}

async function tryCall(tab) {
  await tab.goto(`${host}/docs`);
  const block = await tab.waitForSelector(`.opblock-post:has([data-path="${call}"])`);
  const listed = await tab.$$eval(".opblock-summary-path", (paths) => paths.map((path) => path.dataset.path));
  await tab.screenshot({ path: `${pictures}/docs.png` });
  await (await block.$(".opblock-summary-control")).click();
  const button = await block.waitForSelector(".try-out__btn");
  await button.click();
  await (await block.waitForSelector(".btn.execute")).click();
  const answer = await block.waitForSelector(".live-responses-table .response-col_description pre");
  await answer.scrollIntoView();
  await tab.screenshot({ path: `${pictures}/docs-tried.png` });
  const status = await block.$eval(".live-responses-table .response .response-col_status", (cell) => cell.textContent.trim());
  return { listed, status, answer: await answer.evaluate((text) => text.textContent) };
}

async function readContract(tab) {
  await tab.goto(`${host}/docs/contract`);
  await tab.screenshot({ path: `${pictures}/docs-contract.png` });
  return tab.$eval("main", (main) => ({ heading: main.querySelector("h1").textContent, text: main.innerText }));
}

mkdirSync(pictures, { recursive: true });
const browser = await start(executablePath);
try {
  const tab = await browser.newPage();
  await tab.setViewport({ width: 1280, height: 900 });
  await watch(tab);
  const tried = await tryCall(tab);
  const contract = await readContract(tab);
  write({ ...noticed, ...tried, contract });
} finally {
  await browser.close();
}
