import type { Place, PlaneScale } from './planeGeometry.ts';

/** How a point is drawn: shape and line tell as much as the tone, which is never alone. */
export interface PointLook {
  /** What it says. */
  readonly name: string;
  /** A color of tokens.css by its name. */
  readonly tone: string;
  readonly shape: 'circle' | 'diamond';
  readonly isFilled: boolean;
  readonly isDashed: boolean;
  /** What is drawn later lies above. */
  readonly layer: number;
}

/** From so many points on they are smaller. */
const many = 1_000;

/** Draws every point on a canvas, since thousands of elements would make the page slow. */
export function drawDots(canvas: HTMLCanvasElement, points: readonly (Place & { readonly look: PointLook })[], scale: PlaneScale): void {
  const ratio = devicePixelRatio || 1;
  canvas.width = Math.round(scale.width * ratio);
  canvas.height = Math.round(scale.height * ratio);
  const context = canvas.getContext('2d');
  if (context === null) return;
  context.scale(ratio, ratio);
  const style = getComputedStyle(canvas);
  const color = (name: string): string => style.getPropertyValue(`--${name}`).trim();
  const radius = points.length > many ? 3 : 5;
  context.lineWidth = points.length > many ? 1.4 : 2;
  const byLook = [...Map.groupBy(points, ({ look }) => look)].sort(([a], [b]) => a.layer - b.layer);
  for (const [{ tone, shape, isFilled, isDashed }, alike] of byLook) {
    context.strokeStyle = color(tone);
    context.fillStyle = color(isFilled ? tone : 'sheet');
    context.setLineDash(isDashed ? [2, 2] : []);
    for (const point of alike) {
      const x = scale.xAt(point.x);
      const y = scale.yAt(point.y);
      context.beginPath();
      if (shape === 'diamond') {
        context.moveTo(x, y - radius);
        context.lineTo(x + radius, y);
        context.lineTo(x, y + radius);
        context.lineTo(x - radius, y);
        context.closePath();
      } else context.arc(x, y, radius, 0, 2 * Math.PI);
      context.fill();
      context.stroke();
    }
  }
}
