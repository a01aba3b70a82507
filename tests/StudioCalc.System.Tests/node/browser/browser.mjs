// A browser without a window.
import { launch } from "puppeteer-core";

export const start = (executablePath) =>
  launch({
    executablePath,
    // The sandbox does not work for root, who runs tests in a container.
    args: process.getuid?.() === 0 ? ["--no-sandbox", "--disable-dev-shm-usage"] : ["--disable-dev-shm-usage"],
  });
