import styles from './Plane.module.css';
import { type Axis, areaUnder, type Line, type PlaneScale } from './planeGeometry.ts';

/** What lies below a line. `inside` is what the plane is read for, its line drawn; `margin` is what is only just outside of it. */
export interface Area {
  readonly below: Line;
  readonly look: 'inside' | 'margin';
}

/** What lies behind the points: areas in the order in which they are given, and the scales. */
export function Ground(given: {
  readonly areas: readonly Area[];
  readonly axes: readonly [across: Axis, up: Axis];
  readonly scale: PlaneScale;
}) {
  const {
    areas,
    axes: [across, up],
    scale,
  } = given;
  const floor = scale.yAt(0);
  return (
    <svg viewBox={`0 0 ${scale.width} ${scale.height}`} aria-hidden="true">
      {areas.map(({ below, look }) => {
        const corners = areaUnder(below, scale);
        return (
          <g key={look}>
            <polygon className={`${styles[look]} ${styles.moving}`} points={corners} />
            {look === 'inside' && (
              <polyline className={`${styles.rule} ${styles.moving}`} fill="none" points={corners.split(' ').slice(0, -2).join(' ')} />
            )}
          </g>
        );
      })}
      {scale.yTicks.map(tick => (
        <g key={tick}>
          <line className={styles.gridline} x1={scale.xAt(0)} x2={scale.xAt(scale.xEnd)} y1={scale.yAt(tick)} y2={scale.yAt(tick)} />
          <text x={scale.xAt(0) - 6} y={scale.yAt(tick) + 4} textAnchor="end">
            {tick}
          </text>
        </g>
      ))}
      {scale.xTicks.map(tick => (
        <text key={tick} x={scale.xAt(tick)} y={floor + 16} textAnchor="middle">
          {tick}
        </text>
      ))}
      <text x={scale.xAt(scale.xEnd)} y={floor + 31} textAnchor="end">
        {across.name}, {across.unit}
      </text>
      <text x={4} y={12}>
        {up.name}, {up.unit}
      </text>
    </svg>
  );
}
