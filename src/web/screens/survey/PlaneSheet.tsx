import { useMemo } from 'react';
import type { VerdictWord } from '#core/yardstick/yardstick.ts';
import type { Survey, SurveyRow } from '../../api.ts';
import layout from '../../ui/layout.module.css';
import type { PointLook } from '../../ui/plane/drawDots.ts';
import type { Area } from '../../ui/plane/Ground.tsx';
import { Plane, type PlanePoint } from '../../ui/plane/Plane.tsx';
import type { Axis } from '../../ui/plane/planeGeometry.ts';
import text from '../../ui/text.module.css';

const axes: readonly [Axis, Axis] = [
  { name: 'energy', unit: 'kcal', atLeast: 50 },
  { name: 'sodium', unit: 'mg', atLeast: 100 },
];

/** As the marks of the verdicts are. Foods that fit lie above: they are what one looks for. */
const looks: Readonly<Record<VerdictWord, PointLook>> = {
  over: { name: 'over', tone: 'over', shape: 'diamond', isFilled: true, isDashed: false, layer: 0 },
  "can't tell": { name: "can't tell", tone: 'untold', shape: 'circle', isFilled: false, isDashed: true, layer: 1 },
  nearly: { name: 'nearly', tone: 'nearly', shape: 'circle', isFilled: false, isDashed: false, layer: 2 },
  fits: { name: 'fits', tone: 'fits', shape: 'circle', isFilled: true, isDashed: false, layer: 3 },
};

/** Foods as dots, energy across and sodium up, with what the yardstick leaves room for. The table beside it holds the same for everyone. */
export function PlaneSheet(given: {
  readonly survey: Survey;
  readonly picked: string | undefined;
  readonly onPick: (foodId: string | undefined) => void;
  readonly onBrush: (foodIds: ReadonlySet<string> | undefined) => void;
}) {
  const {
    survey: { rows, rule, companionsText },
    picked,
    onPick,
    onBrush,
  } = given;
  const points = useMemo(() => rows.flatMap(pointOf), [rows]);
  return (
    <section className={layout.sheet} aria-labelledby="plane-title">
      <div className={layout.spread}>
        <h2 id="plane-title">Sodium against energy</h2>
        <span className={`${text.small} ${text.soft}`}>per portion, without what it is eaten with</span>
      </div>
      <Plane
        label={`Plot of ${points.length} foods, energy across and sodium up. Arrow keys go from food to food; the table holds the same.`}
        axes={axes}
        points={points}
        areas={rule === null ? [] : areasOf(rule)}
        wordsOf={({ name, x, y, look }) => `${name}: ${x} kcal, ${y} mg sodium, ${look.name}`}
        picked={picked}
        onPick={onPick}
        onBrush={onBrush}
      />
      <p className={`${text.small} ${text.soft}`}>
        {companionsText} {rule !== null && ruleText(rule)}
      </p>
      <NotDrawn rows={rows} />
    </section>
  );
}

/** A food whose energy or sodium is not known has no place. */
function pointOf({ foodId, name, energyKcal, sodiumMg, verdict }: SurveyRow): readonly PlanePoint[] {
  return energyKcal === null || sodiumMg === null ? [] : [{ key: foodId, name, x: energyKcal, y: sodiumMg, look: looks[verdict] }];
}

type Rule = NonNullable<Survey['rule']>;

function areasOf({ slope, offset, slack }: Rule): readonly Area[] {
  const inside: Area = { look: 'inside', below: { slope, offset } };
  return slack > 0 ? [{ look: 'margin', below: { slope, offset: offset + slack } }, inside] : [inside];
}

function ruleText({ slope, offset, slack }: Rule): string {
  const own = slope === 0 ? '' : slope === 1 ? 'its own kcal ' : `${slope} × its own kcal `;
  const rest = slope === 0 ? `${offset}` : offset < 0 ? `− ${-offset}` : `+ ${offset}`;
  return `So a portion may hold ${own}${rest} mg sodium; over by no more than ${slack} mg is nearly.`;
}

/** Foods without a place on the plane are named, never drawn at zero. */
function NotDrawn({ rows }: { readonly rows: Survey['rows'] }) {
  const missing = rows.filter(({ energyKcal, sodiumMg }) => energyKcal === null || sodiumMg === null);
  if (missing.length === 0) return null;
  const names = missing.length <= 4 ? missing.map(({ name }) => name).join(', ') : `${missing.length} foods`;
  return <p className={`${text.small} ${text.soft}`}>Not drawn, because energy or sodium is unknown: {names}.</p>;
}
