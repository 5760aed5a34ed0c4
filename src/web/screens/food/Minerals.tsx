import { useQuery } from '@tanstack/react-query';
import type { InferResponseType } from 'hono/client';
import { answer, api } from '../../api.ts';
import { ActionButton } from '../../ui/action/ActionButton.tsx';
import layout from '../../ui/layout.module.css';
import { RangeOnScale, type ShownRange } from '../../ui/RangeOnScale.tsx';
import { Told } from '../../ui/Told.tsx';
import text from '../../ui/text.module.css';
import { copyQuestion } from './actions.ts';

type Minerals = InferResponseType<(typeof api.foods)[':id']['minerals']['$get'], 200>;
type Estimate = Extract<Minerals, { kind: 'estimate' }>;
type Mineral = Estimate['minerals'][number];

/** What the label does not print: phosphorus and potassium from the statement, the panel and a composition table. Hatched, never like a printed figure. */
export function MineralsSheet({ foodId, labelId }: { readonly foodId: string; readonly labelId: string }) {
  const minerals = useQuery({
    queryKey: ['minerals', foodId, labelId],
    queryFn: () => answer(api.foods[':id'].minerals.$get({ param: { id: foodId } })),
    staleTime: Number.POSITIVE_INFINITY,
  });
  return (
    <section className={layout.sheet} aria-labelledby="minerals-title">
      <div className={layout.spread}>
        <h2 id="minerals-title">What the label does not print</h2>
        <span className={`${text.small} ${text.soft}`}>hatched: estimated · mark: likely</span>
      </div>
      <Told error={minerals.error} />
      {minerals.isPending && <p role="status">Estimating …</p>}
      {minerals.data?.kind === 'cannot-be-bounded' && <p>Phosphorus and potassium cannot be bounded, because {minerals.data.because}.</p>}
      {minerals.data?.kind === 'estimate' && <Shown estimate={minerals.data} />}
    </section>
  );
}

function Shown({ estimate }: { readonly estimate: Estimate }) {
  return (
    <>
      <p className={text.small}>{estimate.checked}</p>
      {estimate.minerals.map(mineral =>
        mineral.isPrinted ? (
          <p className={text.small} key={mineral.name}>
            {upper(mineral.name)} is printed. Of it from additives: surely {between(mineral.added.sureMg)} mg, likely{' '}
            {mineral.added.likelyMg[1]} mg.
          </p>
        ) : (
          <div key={mineral.name}>
            <RangeOnScale name={upper(mineral.name)} unit="mg" range={estimated(mineral)} words={`likely ${mineral.likelyMg[1]} mg`} />
            <p className={text.small}>
              In {estimate.servingText}: surely {between(mineral.sureMg)} mg, nine times in ten {between(mineral.likelyMg)} mg. From
              additives: surely {between(mineral.added.sureMg)} mg, likely {mineral.added.likelyMg[1]} mg. In 100 g: likely{' '}
              {mineral.per100G.likelyMg[1]} mg, surely {between(mineral.per100G.sureMg)} mg.
            </p>
          </div>
        ),
      )}
      <p className={text.small}>
        Absorbed phosphorus: somewhere between {between(estimate.absorbedPhosphorusMg)} mg, by where it comes from.
      </p>
      <ul className={text.small}>
        {estimate.sentences.map(sentence => (
          <li key={sentence}>{sentence}</li>
        ))}
      </ul>
      <p className={text.small}>
        <b>What would settle it.</b> Ask the maker: “{estimate.question}” <ActionButton action={copyQuestion(estimate.question)} />
      </p>
      <p className={`${text.small} ${text.soft}`}>{estimate.caution}</p>
    </>
  );
}

/** Hatched where it surely lies, with the span in which it lies nine times in ten, and a mark where it is likely. */
function estimated({ sureMg, likelyMg: [from, at, to] }: Mineral): ShownRange {
  return { from: sureMg[0], to: sureMg[1], kind: 'estimated', likely: { from, at, to } };
}

function between(figures: readonly number[]): string {
  const [lo, hi] = [figures[0], figures.at(-1)];
  return lo === hi ? `${lo}` : `${lo} – ${hi}`;
}

function upper(name: string): string {
  return name.charAt(0).toUpperCase() + name.slice(1);
}
