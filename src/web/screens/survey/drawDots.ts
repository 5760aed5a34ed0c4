import type { VerdictWord } from '#core/yardstick/yardstick.ts';
import { toneOf } from '../../ui/verdictLook.ts';
import type { PlaneScale, Point } from './planeGeometry.ts';

/**
 * Draws every food by the shape and tone of its verdict. On a canvas, since thousands of elements would make the page
 * slow; a shape and a word tell the verdict as well, so the tone is never alone.
 */
export function drawDots(
  canvas: HTMLCanvasElement,
  points: readonly (Point & { readonly verdict: VerdictWord })[],
  scale: PlaneScale,
): void {
  const ratio = devicePixelRatio || 1;
  canvas.width = Math.round(scale.width * ratio);
  canvas.height = Math.round(scale.height * ratio);
  const context = canvas.getContext('2d');
  if (context === null) return;
  context.scale(ratio, ratio);
  const style = getComputedStyle(canvas);
  const tone = (name: string): string => style.getPropertyValue(`--${name}`).trim();
  const sheet = tone('sheet');
  const radius = points.length > 1_000 ? 3 : 5;
  context.lineWidth = points.length > 1_000 ? 1.4 : 2;
  // Foods that fit last: they are what one looks for.
  for (const verdict of ['over', "can't tell", 'nearly', 'fits'] as const) {
    context.strokeStyle = tone(toneOf(verdict));
    context.fillStyle = verdict === 'fits' || verdict === 'over' ? tone(toneOf(verdict)) : sheet;
    context.setLineDash(verdict === "can't tell" ? [2, 2] : []);
    for (const point of points) {
      if (point.verdict !== verdict) continue;
      const x = scale.x(point.energyKcal);
      const y = scale.y(point.sodiumMg);
      context.beginPath();
      if (verdict === 'over') {
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
