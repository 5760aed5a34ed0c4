import { useEffect, useLayoutEffect, useMemo, useRef, useState } from 'react';
import text from '../text.module.css';
import { drawDots, type PointLook } from './drawDots.ts';
import { type Area, Ground } from './Ground.tsx';
import styles from './Plane.module.css';
import { type Axis, isArrowKey, nearestPoint, nextPoint, type Place, type PlaneScale, planeScale } from './planeGeometry.ts';

export interface PlanePoint extends Place {
  /** Stands beside the point while it is picked. */
  readonly name: string;
  readonly look: PointLook;
}

interface Brush {
  readonly x: number;
  readonly y: number;
  readonly toX: number;
  readonly toY: number;
}

/**
 * Points on a plane of two scales from zero, before areas below lines. A press or an arrow key picks a point, a drag chooses all of a
 * rectangle. Who does not see it needs a table of the same beside it.
 */
export function Plane(given: {
  readonly label: string;
  readonly axes: readonly [across: Axis, up: Axis];
  /** The same list while the points are the same: they are drawn anew with another one. */
  readonly points: readonly PlanePoint[];
  readonly areas: readonly Area[];
  /** Said of the picked point. */
  readonly wordsOf: (point: PlanePoint) => string;
  readonly picked: string | undefined;
  readonly onPick: (key: string | undefined) => void;
  readonly onBrush: (keys: ReadonlySet<string> | undefined) => void;
}) {
  const { label, axes, points, areas, wordsOf, picked, onPick, onBrush } = given;
  const box = useRef<HTMLDivElement>(null);
  const canvas = useRef<HTMLCanvasElement>(null);
  const [size, setSize] = useState({ width: 520, height: 430 });
  const [brush, setBrush] = useState<Brush>();
  const scale = useMemo(() => planeScale(points, axes, size.width, size.height), [points, axes, size]);

  useEffect(() => {
    const watch = new ResizeObserver(([entry]) => {
      const { width, height } = entry!.contentRect;
      if (width > 0) setSize({ width, height });
    });
    watch.observe(box.current!);
    return () => watch.disconnect();
  }, []);
  useLayoutEffect(() => drawDots(canvas.current!, points, scale), [points, scale]);

  const chosen = points.find(({ key }) => key === picked);
  const placeOf = (event: React.PointerEvent): { readonly x: number; readonly y: number } => {
    const { left, top } = box.current!.getBoundingClientRect();
    return { x: event.clientX - left, y: event.clientY - top };
  };
  const finishBrush = (): void => {
    if (brush === undefined) return;
    if (Math.abs(brush.x - brush.toX) < 5 && Math.abs(brush.y - brush.toY) < 5) {
      onPick(nearestPoint(points, scale, brush.x, brush.y)?.key);
      onBrush(undefined);
    } else {
      const inside = points.filter(
        ({ x, y }) => isBetween(scale.xAt(x), brush.x, brush.toX) && isBetween(scale.yAt(y), brush.y, brush.toY),
      );
      onBrush(new Set(inside.map(({ key }) => key)));
    }
    setBrush(undefined);
  };

  return (
    <div
      className={styles.plane}
      ref={box}
      role="application"
      tabIndex={0}
      aria-label={label}
      onKeyDown={event => {
        if (!isArrowKey(event.key)) return;
        event.preventDefault();
        onPick(nextPoint(points, picked, event.key)?.key);
      }}
      onPointerDown={event => {
        event.currentTarget.setPointerCapture(event.pointerId);
        const { x, y } = placeOf(event);
        setBrush({ x, y, toX: x, toY: y });
      }}
      onPointerMove={event => {
        if (brush === undefined) return;
        const { x, y } = placeOf(event);
        setBrush({ ...brush, toX: x, toY: y });
      }}
      onPointerUp={finishBrush}
    >
      <Ground areas={areas} axes={axes} scale={scale} />
      <canvas ref={canvas} />
      <svg viewBox={`0 0 ${size.width} ${size.height}`} aria-hidden="true">
        {brush !== undefined && (
          <rect
            className={styles.brush}
            x={Math.min(brush.x, brush.toX)}
            y={Math.min(brush.y, brush.toY)}
            width={Math.abs(brush.x - brush.toX)}
            height={Math.abs(brush.y - brush.toY)}
          />
        )}
        {chosen !== undefined && <Picked point={chosen} scale={scale} />}
      </svg>
      <span className={text.unseen} aria-live="polite">
        {chosen === undefined ? '' : wordsOf(chosen)}
      </span>
    </div>
  );
}

function Picked({ point, scale }: { readonly point: PlanePoint; readonly scale: PlaneScale }) {
  const x = scale.xAt(point.x);
  const y = scale.yAt(point.y);
  const isRight = x > scale.width * 0.6;
  return (
    <>
      <circle className={styles.picked} cx={x} cy={y} r={11} />
      <text className={styles.pickedname} x={isRight ? x - 15 : x + 15} y={Math.max(38, y - 12)} textAnchor={isRight ? 'end' : 'start'}>
        {point.name.length > 34 ? `${point.name.slice(0, 33)}…` : point.name}
      </text>
    </>
  );
}

function isBetween(value: number, a: number, b: number): boolean {
  return value >= Math.min(a, b) && value <= Math.max(a, b);
}
