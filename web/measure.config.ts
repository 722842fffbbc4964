import { defineConfig } from "@playwright/test";
import tests from "./playwright.config";

/** The same browser and program as the tests, for figures that depend on the machine: npm run measure. */
export default defineConfig(tests, { testDir: "measure", globalSetup: "./e2e/start-rodwork.ts" });
