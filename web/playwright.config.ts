import { defineConfig } from "@playwright/test";

/**
 * The bench in a real browser against the real program. Debian's Chromium, never a downloaded one; WebGL runs in software, so
 * pictures take a while and one test runs at a time.
 */
export default defineConfig({
  testDir: "e2e",
  globalSetup: "./e2e/start-rodwork.ts",
  workers: 1,
  timeout: 120_000,
  // Software WebGL on a loaded machine can starve a page; a second failure is a failure.
  retries: process.env["CI"] ? 1 : 0,
  expect: { timeout: 30_000 },
  reporter: [["list"]],
  outputDir: "test-results",
  use: {
    viewport: { width: 1280, height: 720 },
    launchOptions: {
      executablePath: process.env["RODWORK_CHROMIUM"] ?? "/usr/bin/chromium",
      args: [
        "--no-sandbox",
        "--no-first-run",
        "--disable-quic",
        "--disable-background-networking",
        "--disable-component-update",
        "--disable-sync",
        "--enable-unsafe-swiftshader",
      ],
    },
  },
});
