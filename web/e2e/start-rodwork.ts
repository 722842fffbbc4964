import { spawn } from "node:child_process";
import { mkdtempSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { fileURLToPath } from "node:url";

const ROOT = fileURLToPath(new URL("../..", import.meta.url));
const START_WITHIN_MS = 600_000; // it may have to be built first

/**
 * Starts the real program on a free port and tells the tests its address; ends it after them. One that runs already can be
 * named instead: RODWORK_ADDRESS.
 */
export default async function startRodwork(): Promise<() => Promise<void>> {
  if (process.env["RODWORK_ADDRESS"]) return () => Promise.resolve();
  const { address, end } = await started(mkdtempSync(join(tmpdir(), "rodwork-cases-")));
  process.env["RODWORK_ADDRESS"] = address;
  return end;
}

/** The program, and how to end it as a person does. */
export interface Program {
  readonly address: string;
  readonly end: () => Promise<void>;
}

/** @param store folder of its case store */
export async function started(store: string): Promise<Program> {
  const program = spawn("./rodwork", ["bench", "--port", "0", "--no-browser", "--store", store], { cwd: ROOT, stdio: ["ignore", "pipe", "pipe"] });
  let said = "";
  const address = await new Promise<string>((resolve, reject) => {
    const late = setTimeout(() => reject(new Error(`./rodwork bench did not start within ${START_WITHIN_MS / 1000} s:\n${said}`)), START_WITHIN_MS);
    const hear = (chunk: Buffer): void => {
      said += chunk.toString();
      const found = /The bench: (http:\S+)/.exec(said)?.[1];
      if (!found) return;
      clearTimeout(late);
      resolve(found);
    };
    program.stdout.on("data", hear);
    program.stderr.on("data", hear);
    program.on("exit", (code) => {
      clearTimeout(late);
      reject(new Error(`./rodwork bench ended with ${code ?? "a signal"} before it listened:\n${said}`));
    });
  });
  const end = (): Promise<void> =>
    new Promise((ended) => {
      program.on("exit", () => ended());
      program.kill("SIGTERM");
    });
  return { address, end };
}
