import react from "@vitejs/plugin-react";
import { defineConfig } from "vitest/config";
import { fakeServer } from "./dev/fake-server.ts";

// `--mode fake` answers the protocol itself, so that the bench can be worked on without the Java server. Otherwise the
// dev server passes /api on to a running one: RODWORK_SERVER=http://127.0.0.1:PORT npm run dev
export default defineConfig(({ mode }) => ({
  plugins: [react(), ...(mode === "fake" ? [fakeServer()] : [])],
  base: "./",
  server: {
    host: "127.0.0.1",
    ...(process.env["RODWORK_SERVER"] ? { proxy: { "/api": { target: process.env["RODWORK_SERVER"], ws: true } } } : {}),
  },
  build: { target: "es2022", chunkSizeWarningLimit: 1200, sourcemap: false },
  test: { include: ["src/**/*.test.ts", "src/**/*.test.tsx"] },
}));
