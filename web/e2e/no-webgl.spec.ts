import { expect } from "@playwright/test";
import { openBench, test } from "./bench";

test.use({
  launchOptions: {
    executablePath: process.env["RODWORK_CHROMIUM"] ?? "/usr/bin/chromium",
    args: ["--no-sandbox", "--no-first-run", "--disable-3d-apis", "--disable-quic", "--disable-background-networking", "--disable-component-update", "--disable-sync"],
  },
});

test("without WebGL the bench says clearly what is missing", async ({ page }) => {
  await openBench(page);
  await expect(page.getByRole("alert")).toContainText("WebGL 2 is missing");
});
