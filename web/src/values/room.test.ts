import { expect, it } from "vitest";
import { ROOM_BANDS, roomText } from "./room";

it("the bands join, and the less room the darker", () => {
  const light = ({ fill }: { fill: string }): number => [1, 3, 5].reduce((sum, at) => sum + parseInt(fill.slice(at, at + 2), 16), 0);
  ROOM_BANDS.forEach((band, i) => {
    if (i === 0) return;
    expect(band.fromMm).toBe(ROOM_BANDS[i - 1]!.belowMm);
    expect(light(band)).toBeGreaterThan(light(ROOM_BANDS[i - 1]!));
  });
  expect(ROOM_BANDS.map(roomText)).toEqual(["under 0.5", "0.5–1.0", "1.0–1.5", "1.5–2.0"]);
});
