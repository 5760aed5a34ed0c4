import { useEffect, useLayoutEffect, useMemo, useRef, useState } from 'react';
import type { Survey, SurveyRow } from '../../api.ts';
import text from '../../ui/text.module.css';
import { drawDots } from './drawDots.ts';
import styles from './Plane.module.css';
import { areaUnder, nearestFood, nextFood, type PlaneScale, type Point, planeScale } from './planeGeometry.ts';

type PlottedRow = SurveyRow & Point;

/** Foods as dots, energy across and sodium up, with the yardstick's line. The table beside it holds the same for everyone. */
export function Plane(given: {
  readonly rows: readonly SurveyRow[];
  readonly rule: Survey['rule'];
  readonly picked: string | undefined;
  readonly onPick: (foodId: string | undefined) => void;
  readonly onBrush: (foodIds: ReadonlySet<string> | undefined) => void;
}) {
  const { rows, rule, picked, onPick, onBrush } = given;
  const box = useRef<HTMLDivElement>(null);
  const canvas = useRef<HTMLCanvasElement>(null);
  const [size, setSize] = useState({ width: 520, height: 430 });
  const [brush, setBrush] = useState<{ readonly x: number; readonly y: number; readonly toX: number; readonly toY: number }>();
  const points = useMemo(() => rows.filter((row): row is PlottedRow => row.energyKcal !== null && row.sodiumMg !== null), [rows]);
  const scale = useMemo(() => planeScale(points, size.width, size.height), [points, size]);

  useEffect(() => {
    const watch = new ResizeObserver(([entry]) => {
      const { width, height } = entry!.contentRect;
      if (width > 0) setSize({ width, height });
    });
    watch.observe(box.current!);
    return () => watch.disconnect();
  }, []);
  useLayoutEffect(() => drawDots(canvas.current!, points, scale), [points, scale]);

  const chosen = points.find(({ foodId }) => foodId === picked);
  const placeOf = (event: React.PointerEvent): { readonly x: number; readonly y: number } => {
    const { left, top } = box.current!.getBoundingClientRect();
    return { x: event.clientX - left, y: event.clientY - top };
  };
  const finishBrush = (): void => {
    if (brush === undefined) return;
    const inside = points.filter(
      ({ energyKcal, sodiumMg }) => within(scale.x(energyKcal), brush.x, brush.toX) && within(scale.y(sodiumMg), brush.y, brush.toY),
    );
    const isClick = Math.abs(brush.x - brush.toX) < 5 && Math.abs(brush.y - brush.toY) < 5;
    if (isClick) {
      onPick(nearestFood(points, scale, brush.x, brush.y)?.foodId);
      onBrush(undefined);
    } else onBrush(new Set(inside.map(({ foodId }) => foodId)));
    setBrush(undefined);
  };

  return (
    <div
      className={styles.plane}
      ref={box}
      role="application"
      tabIndex={0}
      aria-label={`Plot of ${points.length} foods, energy across and sodium up. Arrow keys go from food to food; the table holds the same.`}
      onKeyDown={event => {
        if (!event.key.startsWith('Arrow')) return;
        event.preventDefault();
        onPick(nextFood(points, picked, event.key as 'ArrowLeft')?.foodId);
      }}
      onPointerDown={event => {
        event.currentTarget.setPointerCapture(event.pointerId);
        const place = placeOf(event);
        setBrush({ ...place, toX: place.x, toY: place.y });
      }}
      onPointerMove={event => {
        if (brush === undefined) return;
        const { x, y } = placeOf(event);
        setBrush({ ...brush, toX: x, toY: y });
      }}
      onPointerUp={finishBrush}
    >
      <svg viewBox={`0 0 ${size.width} ${size.height}`} aria-hidden="true">
        {rule !== null && <RuleArea rule={rule} scale={scale} />}
        <Axes scale={scale} />
      </svg>
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
        {chosen !== undefined && <PickedFood food={chosen} scale={scale} />}
      </svg>
      <span className={text.unseen} aria-live="polite">
        {chosen === undefined ? '' : `${chosen.name}: ${chosen.energyKcal} kcal, ${chosen.sodiumMg} mg sodium, ${chosen.verdict}`}
      </span>
    </div>
  );
}

function RuleArea({ rule, scale }: { readonly rule: NonNullable<Survey['rule']>; readonly scale: PlaneScale }) {
  const band = { slope: rule.slope, offset: rule.offset + rule.slack };
  const under = areaUnder(rule, scale);
  return (
    <>
      {rule.slack > 0 && <polygon className={`${styles.band} ${styles.moving}`} points={areaUnder(band, scale)} />}
      <polygon className={`${styles.under} ${styles.moving}`} points={under} />
      <polyline className={`${styles.rule} ${styles.moving}`} fill="none" points={under.split(' ').slice(0, -2).join(' ')} />
    </>
  );
}

function Axes({ scale }: { readonly scale: PlaneScale }) {
  const floor = scale.y(0);
  return (
    <>
      {scale.yTicks.map(tick => (
        <g key={tick}>
          <line className={styles.gridline} x1={scale.x(0)} x2={scale.x(scale.xMax)} y1={scale.y(tick)} y2={scale.y(tick)} />
          <text x={scale.x(0) - 6} y={scale.y(tick) + 4} textAnchor="end">
            {tick}
          </text>
        </g>
      ))}
      {scale.xTicks.map(tick => (
        <text key={tick} x={scale.x(tick)} y={floor + 16} textAnchor="middle">
          {tick}
        </text>
      ))}
      <text x={scale.x(scale.xMax)} y={floor + 31} textAnchor="end">
        energy, kcal
      </text>
      <text x={4} y={12}>
        sodium, mg
      </text>
    </>
  );
}

function PickedFood({ food, scale }: { readonly food: PlottedRow; readonly scale: PlaneScale }) {
  const x = scale.x(food.energyKcal);
  const y = scale.y(food.sodiumMg);
  const isRight = x > scale.width * 0.6;
  return (
    <>
      <circle className={styles.picked} cx={x} cy={y} r={11} />
      <text className={styles.pickedname} x={isRight ? x - 15 : x + 15} y={Math.max(28, y - 12)} textAnchor={isRight ? 'end' : 'start'}>
        {food.name.length > 34 ? `${food.name.slice(0, 33)}…` : food.name}
      </text>
    </>
  );
}

function within(value: number, a: number, b: number): boolean {
  return value >= Math.min(a, b) && value <= Math.max(a, b);
}
