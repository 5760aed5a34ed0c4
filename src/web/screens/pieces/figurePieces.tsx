import { useState } from 'react';
import { Counts } from '../../ui/Counts.tsx';
import { Slider } from '../../ui/form/Slider.tsx';
import { WordChoice } from '../../ui/form/WordChoice.tsx';
import layout from '../../ui/layout.module.css';
import type { PointLook } from '../../ui/plane/drawDots.ts';
import type { Area } from '../../ui/plane/Ground.tsx';
import { Plane, type PlanePoint } from '../../ui/plane/Plane.tsx';
import type { Axis } from '../../ui/plane/planeGeometry.ts';
import { RangeOnScale } from '../../ui/RangeOnScale.tsx';
import { Trend } from '../../ui/Trend.tsx';

const axes: readonly [Axis, Axis] = [
  { name: 'width', unit: 'cm', atLeast: 50 },
  { name: 'weight', unit: 'kg', atLeast: 10 },
];
const light: PointLook = { name: 'light', tone: 'fits', shape: 'circle', isFilled: true, isDashed: false, layer: 1 };
const heavy: PointLook = { name: 'heavy', tone: 'over', shape: 'diamond', isFilled: true, isDashed: false, layer: 0 };
const points: readonly PlanePoint[] = Array.from({ length: 40 }, (_, at) => ({
  key: String(at),
  name: `Box ${at + 1}`,
  x: (at * 37) % 90,
  y: (at * 23) % 30,
  look: (at * 23) % 30 > 15 ? heavy : light,
}));
const areas: readonly Area[] = [
  { look: 'margin', below: { slope: 0.1, offset: 14 } },
  { look: 'inside', below: { slope: 0.1, offset: 10 } },
];
const warmth = [
  { day: '2026-03-01', value: 19 },
  { day: '2026-03-09', value: 23 },
  { day: '2026-04-01', value: 21 },
];
const hot = { day: '2026-04-08', value: 27 };
const cold = { day: '2026-04-01', value: 12 };
const mild = { range: [18, 24] as const, says: 'what most like' };
const warm = { range: [15, null] as const, says: 'what plants need' };
const rooms = [
  ['attic', 'the attic'],
  ['cellar', 'the cellar'],
] as const;

/** What shows figures: ranges on a scale, one figure over time, points on a plane, counts side by side, a step that is slid to. */
export function FigurePieces() {
  const [picked, setPicked] = useState<string>();
  const [chosen, setChosen] = useState<ReadonlySet<string>>();
  const [shown, setShown] = useState<'light' | 'heavy'>();
  const [step, setStep] = useState(3);
  const [room, setRoom] = useState<'attic' | 'cellar'>('attic');
  return (
    <section className={`${layout.sheet} ${layout.stack}`} aria-labelledby="figure-pieces">
      <h2 id="figure-pieces">Figures</h2>
      <div>
        <RangeOnScale name="Exact" unit="kg" range={{ from: 22.5, to: 23.5, kind: 'exact' }} words="22.5 – 23.5 kg" />
        <RangeOnScale name="Computed" unit="g" range={{ from: 0.2, to: 0.4, kind: 'computed' }} words="0.2 – 0.4 g" />
        <RangeOnScale name="Without an end" unit="g" range={{ from: 5, to: null, kind: 'exact' }} words="5 g or more" />
        <RangeOnScale
          name="Estimated"
          unit="mg"
          range={{ from: 100, to: 220, kind: 'estimated', likely: { from: 130, at: 160, to: 200 } }}
          words="likely 160 mg"
        />
        <RangeOnScale name="Estimated too" unit="mg" range={{ from: 0, to: 40, kind: 'estimated' }} words="0 – 40 mg" />
        <RangeOnScale name="Not known" unit="mg" range={undefined} words="unknown" />
      </div>
      <div>
        <Trend label="In its band" shown="21 °C" note="18 – 24 °C · today" unit="°C" points={warmth} bands={[mild]} />
        <Trend label="Above" shown="27 °C" note="18 – 24 °C · today" out="above" unit="°C" points={[...warmth, hot]} bands={[mild]} />
        <Trend
          label="Below"
          shown="12 °C"
          note="15 °C or more · 3 days old"
          out="below"
          unit="°C"
          points={[cold]}
          bands={[warm]}
          also="12 °C is 53.6 °F."
        />
        <Trend label="Without a band" shown="21 °C" note="today" unit="°C" points={warmth} bands={[]} />
      </div>
      <Plane
        label="Plot of 40 boxes, width across and weight up. Arrow keys go from box to box."
        axes={axes}
        points={points}
        areas={areas}
        wordsOf={({ name, x, y, look }) => `${name}: ${x} cm, ${y} kg, ${look.name}`}
        picked={picked}
        onPick={setPicked}
        onBrush={setChosen}
      />
      <p role="status">In the rectangle: {chosen === undefined ? 'none is drawn' : `${chosen.size} boxes`}.</p>
      <Counts
        label="Boxes"
        parts={[
          { key: 'light', count: 30, words: 'light', look: undefined },
          { key: 'heavy', count: 10, words: 'heavy', look: undefined },
        ]}
        value={shown}
        onChange={setShown}
      />
      <Slider label="Boxes on the cart" value={step} onChange={setStep} last={10} words={`${step} boxes`} />
      <p>
        A box from <WordChoice label="Room" choices={rooms} value={room} onChange={setRoom} after="." />
      </p>
    </section>
  );
}
