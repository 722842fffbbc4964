import { readFileSync } from "node:fs";
import { test } from "@playwright/test";
import WebSocket from "ws";
import { ADDRESS, arch } from "../e2e/bench";

const SECONDS = 8;

/** Told and not judged, as drag.spec.ts: what a client gets that asks for the next field as soon as one has come. */
test("fields a second to a client that does not draw", async () => {
  const file = arch("lower-dense.stl");
  test.skip(file === null, "skipped: ../shared/arches/lower-dense.stl is not here (RODWORK_SHARED)");
  const { origin, host, hash } = ADDRESS();
  const token = hash.slice(1);
  const headers = { Authorization: `Bearer ${token}` };
  const opened = await fetch(`${origin}/api/casts?name=lower-dense.stl&jaw=lower`, { method: "POST", headers, body: readFileSync(file!) });
  const { id } = (await opened.json()) as { id: string };
  await fetch(`${origin}/api/casts/${id}/mesh?thinned=true`, { headers });
  for (const [what, kind] of [
    ["exact, depths alone", { fieldAlone: true }],
    ["exact, the whole survey", {}],
    ["thinned, depths alone", { thinned: true }],
  ] as const) {
    const line = new WebSocket(`ws://${host}/api/casts/${id}/survey?token=${token}`);
    let seq = 0;
    let began = 0;
    const ask = (): void => {
      const a = 0.37 * ++seq;
      line.send(JSON.stringify({ kind: "survey", seq, tilt: [9 * Math.sin(a), 7 * Math.cos(1.3 * a)], gauges: [0.25, 0.5, 0.75], ...kind }));
    };
    const millis: number[] = [];
    await new Promise<void>((done, failed) => {
      line.on("error", failed);
      line.on("open", ask);
      line.on("message", (data: Buffer, binary: boolean) => {
        if (!binary) return failed(new Error(data.toString()));
        if (seq === 20) began = Date.now(); // warm from here
        if (seq > 20) millis.push((JSON.parse(data.subarray(8, 8 + data.readUInt32LE(4)).toString()) as { millis: number }).millis);
        if (seq > 20 && Date.now() - began > 1000 * SECONDS) return done();
        ask();
      });
    });
    line.close();
    const took = millis.toSorted((a, b) => a - b);
    console.log(`${what}: ${(1000 * millis.length / (Date.now() - began)).toFixed(1)} a second; measuring alone ${took[took.length >> 1]!.toFixed(0)} ms median`);
  }
  await fetch(`${origin}/api/casts/${id}`, { method: "DELETE", headers });
});
