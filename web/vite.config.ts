import react from "@vitejs/plugin-react";
import { defineConfig } from "vitest/config";

// To work on the bench: start ./rodwork bench --no-browser, then RODWORK_SERVER=http://127.0.0.1:PORT npm run dev, and open the
// dev server's address with the same #token.
const server = process.env["RODWORK_SERVER"];

export default defineConfig({
  plugins: [react()],
  base: "./",
  server: {
    host: "127.0.0.1",
    // The program wants to be asked in its own name: Host and Origin are rewritten on the way.
    ...(server ? { proxy: { "/api": { target: server, ws: true, changeOrigin: true, headers: { origin: server } } } } : {}),
  },
  build: { target: "es2022", chunkSizeWarningLimit: 1200, sourcemap: false },
  test: { include: ["src/**/*.test.ts", "src/**/*.test.tsx"] },
});
