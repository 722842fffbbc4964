import { bandText } from "../panels/Legend";
import type { BenchState } from "../state/bench-state";
import { type Band, bands, HATCH_LINE_PX, HATCH_STEP_PX, type Look } from "../values/look";
import { totalTilt } from "../values/tilt";
import { degreesText } from "../values/units";

const HEAD = 40;
const FOOT = 40;

/** The picture of the cast as a sheet: name and tilts above, the legend below. For saving. */
export function sheet(canvas: HTMLCanvasElement, state: BenchState, look: Look): HTMLCanvasElement {
  const out = document.createElement("canvas");
  const ratio = Math.min(2, window.devicePixelRatio || 1);
  const width = canvas.width / ratio;
  const height = canvas.height / ratio;
  out.width = canvas.width;
  out.height = Math.round((height + HEAD + FOOT) * ratio);
  const pen = out.getContext("2d");
  if (!pen) throw new Error("this browser cannot draw a picture to save");
  pen.scale(ratio, ratio);
  pen.fillStyle = look.table;
  pen.fillRect(0, 0, width, height + HEAD + FOOT);
  pen.drawImage(canvas, 0, HEAD, width, height);
  pen.font = '600 15px "DejaVu Sans", Inter, system-ui, sans-serif';
  pen.fillStyle = look.ink;
  pen.textBaseline = "middle";
  pen.fillText(state.cast?.name ?? "", 16, HEAD / 2);
  pen.font = '13px "DejaVu Sans", Inter, system-ui, sans-serif';
  pen.textAlign = "right";
  pen.fillText(tiltWords(state), width - 16, HEAD / 2);
  pen.textAlign = "left";
  legend(pen, state.cast ? bands(state.cast.gaugesMm, state.cast.shallowMm) : [], state, look, HEAD + height + FOOT / 2);
  return out;
}

export function tiltWords({ cast, document }: BenchState): string {
  if (!document) return "";
  const { tilt } = document;
  const right = cast?.jaw ? ` · right tilt ${degreesText(tilt.right)}` : "";
  return `${cast?.jaw ?? "jaw not told"} · anterior tilt ${degreesText(tilt.anterior)}${right} · total ${degreesText(totalTilt(tilt))}`;
}

function legend(pen: CanvasRenderingContext2D, all: readonly Band[], state: BenchState, look: Look, y: number): void {
  let x = 16;
  const word = (text: string, colour: string): void => {
    pen.fillStyle = colour;
    pen.fillText(text, x, y);
    x += pen.measureText(text).width + 18;
  };
  word(state.units === "in" ? "undercut, in (nominal)" : "undercut, mm", look.soft);
  all.forEach((band, i) => {
    swatch(pen, band, x, y - 7);
    x += 32;
    word(bandText(all, i, state.units), look.ink);
  });
  for (const [colour, text] of [
    [look.lead, "survey line"],
    [look.brassShade, "gauge curve"],
  ] as const) {
    pen.fillStyle = look.plaster;
    pen.fillRect(x, y - 7, 26, 14);
    pen.fillStyle = colour;
    pen.fillRect(x, y - 1.2, 26, 2.4);
    x += 32;
    word(text, look.ink);
  }
}

function swatch(pen: CanvasRenderingContext2D, band: Band, x: number, y: number): void {
  pen.save();
  pen.beginPath();
  pen.rect(x, y, 26, 14);
  pen.clip();
  pen.fillStyle = band.fill;
  pen.fillRect(x, y, 26, 14);
  pen.strokeStyle = band.line;
  pen.lineWidth = HATCH_LINE_PX;
  const step = HATCH_STEP_PX * Math.SQRT2;
  for (let k = -14; k < 40; k += step) {
    if (band.hatch === "rising" || band.hatch === "crossed") line(pen, x + k, y + 14, x + k + 14, y);
    if (band.hatch === "falling" || band.hatch === "crossed") line(pen, x + k, y, x + k + 14, y + 14);
  }
  pen.restore();
}

function line(pen: CanvasRenderingContext2D, x0: number, y0: number, x1: number, y1: number): void {
  pen.beginPath();
  pen.moveTo(x0, y0);
  pen.lineTo(x1, y1);
  pen.stroke();
}

/** A file name that says what the picture shows. */
export function pictureName({ cast, document }: BenchState): string {
  const name = (cast?.name ?? "cast").replace(/\.[a-z0-9]{2,4}$/i, "").replace(/[^\p{L}\p{N}._ -]+/gu, "_");
  return `${name} a${document?.tilt.anterior.toFixed(1) ?? 0} r${document?.tilt.right.toFixed(1) ?? 0}.png`;
}

export function save(canvas: HTMLCanvasElement, name: string): void {
  canvas.toBlob((blob) => {
    if (!blob) return;
    const link = document.createElement("a");
    link.href = URL.createObjectURL(blob);
    link.download = name;
    link.click();
    setTimeout(() => URL.revokeObjectURL(link.href), 10_000);
  }, "image/png");
}
