import type { IncomingMessage, ServerResponse } from "node:http";
import type { Duplex } from "node:stream";
import type { Plugin } from "vite";
import { type RawData, WebSocketServer } from "ws";
import { FakeCast } from "./fake-cast.ts";

type V = [number, number, number];
const rad = (deg: number): number => (deg * Math.PI) / 180;

/** Speaks docs/protocol.md with casts of spheres, inside Vite's dev server (`npm run dev:fake`). No part of the product. */
export function fakeServer(): Plugin {
  const casts = new Map<string, { fake: FakeCast; jaw: "upper" | "lower" | null; name: string; framed: boolean }>();
  const open = (name: string, jaw: "upper" | "lower"): string => {
    if (!casts.has(name)) casts.set(name, { fake: new FakeCast(jaw), jaw: name.startsWith("unknown") ? null : jaw, name, framed: !name.startsWith("unknown") });
    return name;
  };
  const info = (id: string): object => {
    const { fake, jaw, name, framed } = casts.get(id)!;
    return {
      id, name, jaw,
      triangles: fake.corners.length / 3,
      vertices: fake.positions.length / 3,
      edgeMm: 0.22,
      accuracyMm: 0.03,
      intake: {},
      intakeLines: ["binary STL, spheres on an arch, in mm", "58 × 44 × 12 mm; open, 13 boundary loops", "plaster base found: 360 triangles, left out of every figure", "nothing to mend"],
      frame: framed ? { origin: [0, 0, 0], x: jaw === "lower" ? [1, 0, 0] : [1, 0, 0], y: [0, 1, 0], z: [0, 0, 1], upUncertaintyDeg: 0.8, frontUncertaintyDeg: 1.5, confident: true } : null,
      frameProblem: framed ? null : { code: "frame.unsure", message: "Which way is up could not be told from the shape: two directions fit equally well.", advice: "Show it in two steps." },
      gaugesMm: [0.25, 0.5, 0.75],
      capMm: 4, warnTiltDeg: 10, limitTiltDeg: 15, noteTiltDeg: 5,
    };
  };
  const axis = ([a, r]: number[], jaw: string | null): V => {
    const v: V = [(jaw === "lower" ? -1 : 1) * Math.tan(rad(r!)), -Math.tan(rad(a!)), 1];
    const k = 1 / Math.hypot(...v);
    return [v[0] * k, v[1] * k, v[2] * k];
  };

  const serve = (request: IncomingMessage, response: ServerResponse, next: () => void): void => {
    const url = new URL(request.url ?? "/", "http://fake");
    const say = (status: number, body: object): void => {
      response.writeHead(status, { "content-type": "application/json" });
      response.end(JSON.stringify(body));
    };
    const at = /^\/api\/casts(?:\/([^/]+))?(?:\/([^/]+))?$/.exec(url.pathname);
    if (!at) return next();
    const [, id, part] = at;
    if (id === "demo") return say(201, info(open(`demo ${part}`, part as "upper")));
    if (id && part === "mesh") {
      const { fake } = casts.get(decodeURIComponent(id))!;
      const head = new Uint32Array([0x314d5752, fake.positions.length / 3, fake.corners.length / 3, 0]);
      response.writeHead(200, { "content-type": "application/octet-stream" });
      for (const block of [head, new Float32Array(fake.positions), new Uint32Array(fake.corners)]) response.write(Buffer.from(block.buffer));
      return void response.end(Buffer.from(new Uint8Array(fake.base)));
    }
    const chunks: Buffer[] = [];
    request.on("data", (chunk: Buffer) => chunks.push(chunk));
    request.on("end", () => {
      const body = Buffer.concat(chunks);
      if (!id && request.method === "GET") return say(200, { casts: [], demo: ["lower", "upper"] });
      if (!id) {
        if (!body.subarray(0, 200).includes("solid")) {
          return say(422, { code: "read.unknown-format", message: `${url.searchParams.get("name") ?? ""}: byte 0 to 200 fit none of STL, PLY, OBJ, 3MF, glTF and OFF.`, advice: "Export the scan again as binary STL or PLY." });
        }
        return say(201, info(open(url.searchParams.get("name") ?? "file", "upper")));
      }
      const cast = casts.get(decodeURIComponent(id));
      if (!cast) return say(404, { code: "cast.gone", message: `No cast ${id} is open.`, advice: "Open it again." });
      if (part === "frame") {
        const wanted = JSON.parse(body.toString()) as { jaw: "upper" | "lower" | null };
        cast.jaw = wanted.jaw;
        cast.framed = true;
      }
      say(200, info(decodeURIComponent(id)));
    });
  };

  return {
    name: "fake-server",
    configureServer(server) {
      server.middlewares.use(serve);
      const sockets = new WebSocketServer({ noServer: true });
      server.httpServer?.on("upgrade", (request: IncomingMessage, socket: Duplex, head: Buffer) => {
        const at = /^\/api\/casts\/([^/]+)\/survey/.exec(request.url ?? "");
        const cast = at && casts.get(decodeURIComponent(at[1]!));
        if (!cast) return;
        sockets.handleUpgrade(request, socket, head, (line) => {
          let p: V = [0, 0, 1];
          line.on("message", (data: RawData) => {
            const asked = JSON.parse((data as Buffer).toString()) as { kind: string; seq: number; tilt: number[]; gauges: number[]; gauge: number | null; point: V; triangle: number };
            const { kind, seq } = asked;
            if (kind === "survey") {
              const began = performance.now();
              p = axis(asked.tilt, cast.jaw);
              const made = cast.fake.survey(p, asked.gauges);
              const total = (Math.acos(p[2]) * 180) / Math.PI;
              const text = JSON.stringify({ seq, tilt: asked.tilt, axis: p, totalTiltDeg: total, millis: performance.now() - began, exact: true, vertices: made.depth.length, points: made.points.length / 3, curves: made.curves, hiddenLines: 3, undercutAreaMm2: 412, undercutVolumeMm3: 96, deepest: [], notes: [] });
              const json = Buffer.from(text.padEnd((text.length + 3) & ~3));
              const pad = (4 - (made.flags.length % 4)) % 4;
              const start = Buffer.alloc(8);
              start.writeUInt32LE(0x31535752, 0);
              start.writeUInt32LE(json.length, 4);
              line.send(Buffer.concat([start, json, Buffer.from(made.depth.buffer), Buffer.from(made.flags.buffer), Buffer.alloc(pad), Buffer.from(new Float32Array(made.points).buffer)]));
            } else if (kind === "read") line.send(JSON.stringify({ kind: "reading", seq, reading: cast.fake.reading(asked.point, asked.triangle, p, [0, 0, 1]) }));
            else if (kind === "profile") line.send(JSON.stringify({ kind, seq, profile: cast.fake.profile(asked.point, asked.triangle, p, asked.gauge) }));
            else if (kind === "seat") line.send(JSON.stringify({ kind, seq, ...cast.fake.seat(asked.point, asked.triangle, p, asked.gauge ?? 0.25) }));
          });
        });
      });
    },
  };
}
