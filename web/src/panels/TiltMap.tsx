import { type PointerEvent, type ReactElement, useRef } from "react";
import { newGesture, STEEPEST } from "../state/bench";
import { frontUp, type MapPlace, mapPlace, type Tilt, tiltAt } from "../values/tilt";
import { degrees, degreesText } from "../values/units";
import type { PathMap } from "../wire/path";
import { type ShadedBy, TiltShading } from "./TiltShading";
import { useBench, useDesk } from "./use-bench";

const RADIUS = 98;

function BestPlace(props: { readonly at: MapPlace; readonly scale: number }): ReactElement {
  const { at, scale } = props;
  return <path d="M0 -6L6 0L0 6L-6 0Z" className="bestplace" data-testid="best" transform={`translate(${at.x * scale} ${-1 * at.y * scale})`} />;
}

/** The tilt map: a round spirit level seen from above. The dot is the cast's tilt and moves towards the side that goes down. */
export function TiltMap(props: {
  readonly map: PathMap | null;
  readonly by: ShadedBy;
  readonly best: Tilt | null;
  /** Told the tilt under the pointer; null when it has left. */
  readonly point: (at: Tilt | null) => void;
}): ReactElement | null {
  const { map, by, best, point } = props;
  const { bench } = useDesk();
  const cast = useBench((s) => s.cast);
  const document = useBench((s) => s.document);
  const hold = useRef<{ gesture: number; dx: number; dy: number } | null>(null);
  if (!cast?.frame || !document) return null;
  const { jaw } = cast;
  const rim = document.pastLimit ? STEEPEST + 3 : cast.limitTiltDeg + 1.8;
  const scale = RADIUS / rim;
  const dot = mapPlace(document.tilt, jaw);
  const rings = document.pastLimit ? [cast.limitTiltDeg, 30, STEEPEST] : [cast.noteTiltDeg, cast.warnTiltDeg, cast.limitTiltDeg];
  const up = frontUp(jaw) === 1;

  const at = (event: PointerEvent<SVGSVGElement>): { x: number; y: number } => {
    const box = event.currentTarget.getBoundingClientRect();
    const k = 204 / box.width / scale;
    return { x: (event.clientX - box.left - box.width / 2) * k, y: -(event.clientY - box.top - box.height / 2) * k };
  };
  const move = (event: PointerEvent<SVGSVGElement>): void => {
    const { x, y } = at(event);
    if (!hold.current) {
      point(map && Math.hypot(x, y) <= map.coneDeg ? tiltAt({ x: degrees(x), y: degrees(y) }, jaw) : null);
      return;
    }
    const { dx, dy, gesture } = hold.current;
    bench.setTilt(tiltAt({ x: degrees(jaw ? x + dx : 0), y: degrees(y + dy) }, jaw), gesture);
  };
  const down = (event: PointerEvent<SVGSVGElement>): void => {
    if (event.button !== 0) return;
    const { x, y } = at(event);
    const onDot = Math.hypot(x - dot.x, y - dot.y) * scale < 14;
    hold.current = { gesture: newGesture(), dx: onDot ? dot.x - x : 0, dy: onDot ? dot.y - y : 0 };
    event.currentTarget.setPointerCapture(event.pointerId);
    if (!onDot) move(event);
  };

  return (
    <svg
      className="tiltmap"
      viewBox="-102 -102 204 204"
      role="application"
      tabIndex={0}
      data-tilt={`${document.tilt.anterior} ${document.tilt.right}`}
      aria-label={`Tilt map. Anterior tilt ${degreesText(document.tilt.anterior)}, right tilt ${degreesText(document.tilt.right)}. Arrow keys move the dot.`}
      onPointerDown={down}
      onPointerMove={move}
      onPointerLeave={() => point(null)}
      onPointerUp={() => (hold.current = null)}
      onPointerCancel={() => (hold.current = null)}
    >
      <defs>
        <radialGradient id="level" cx=".44" cy=".38">
          <stop offset="0" stopColor="var(--level-1)" />
          <stop offset=".5" stopColor="var(--level-2)" />
          <stop offset="1" stopColor="var(--level-3)" />
        </radialGradient>
      </defs>
      <circle r={RADIUS} fill="url(#level)" stroke="var(--level-rim)" strokeWidth="3" />
      {map && <TiltShading map={map} by={by} scale={scale} jaw={jaw} />}
      {!jaw && <path d={`M-${RADIUS - 2} 0A${RADIUS - 2} ${RADIUS - 2} 0 0 1 ${RADIUS - 2} 0`} className="shut" />}
      <path d="M-96 0H96M0 -96V96" className="hair" />
      {rings.map((ring, i) => (
        <g key={ring}>
          <circle r={ring * scale} className={i === rings.length - 1 ? "ring last" : "ring"} />
          <text x={ring * scale * 0.7071 + 2} y={-ring * scale * 0.7071 - 2} className="ringtext">
            {ring}°
          </text>
        </g>
      ))}
      <text y="-84" className="side">{up ? "front down" : "back down"}</text>
      <text y="90" className="side">{up ? "back down" : "front down"}</text>
      <text x="-90" y="-4" className={jaw ? "side start" : "side start off"}>right</text>
      <text x="90" y="-4" className={jaw ? "side end" : "side end off"}>left</text>
      <circle r="1.8" className="zero" />
      {document.pins.map((pin) => {
        const place = mapPlace(pin.tilt, jaw);
        return (
          <g key={pin.id} className="mappin" transform={`translate(${place.x * scale} ${-1 * place.y * scale})`} data-pin={pin.name}>
            <path d="M0 0L-2.6 -6H2.6Z" />
            <text y="-8">{pin.name}</text>
          </g>
        );
      })}
      {best && <BestPlace at={mapPlace(best, jaw)} scale={scale} />}
      <g transform={`translate(${dot.x * scale} ${-1 * dot.y * scale})`} className="dot" data-testid="dot">
        <circle r="9.5" />
        <path d="M-5.5 -3A6.2 6.2 0 0 1 1 -6" />
      </g>
    </svg>
  );
}
