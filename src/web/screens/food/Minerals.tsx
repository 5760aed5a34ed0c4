import { useQuery } from '@tanstack/react-query';
import type { InferResponseType } from 'hono/client';
import { answer, api } from '../../api.ts';
import button from '../../ui/Button.module.css';
import layout from '../../ui/layout.module.css';
import { Told } from '../../ui/Told.tsx';
import text from '../../ui/text.module.css';
import styles from './RangeBar.module.css';

type Minerals = InferResponseType<(typeof api.foods)[':id']['minerals']['$get'], 200>;
type Estimate = Extract<Minerals, { kind: 'estimate' }>;

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
            <div className={styles.range}>
              <span>{upper(mineral.name)}</span>
              <HatchedBar sure={mineral.sureMg} likely={mineral.likelyMg} />
              <span>likely {mineral.likelyMg[1]} mg</span>
            </div>
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
        <b>What would settle it.</b> Ask the maker: “{estimate.question}”{' '}
        <button
          type="button"
          className={`${button.quiet} ${layout.noprint}`}
          onClick={() => void navigator.clipboard.writeText(estimate.question)}
        >
          Copy the question
        </button>
      </p>
      <p className={`${text.small} ${text.soft}`}>{estimate.caution}</p>
    </>
  );
}

/** The sure range hatched on a scale from zero, the nine-in-ten range denser, a mark at the likely value. */
function HatchedBar({ sure, likely }: { readonly sure: readonly number[]; readonly likely: readonly number[] }) {
  const most = Math.max(1, sure[1]! * 1.2);
  const x = (mg: number): number => (mg / most) * 400;
  return (
    <svg viewBox="0 0 400 20" preserveAspectRatio="none" aria-hidden="true">
      <defs>
        <pattern id="hatch" width="6" height="6" patternUnits="userSpaceOnUse" patternTransform="rotate(45)">
          <line className={styles.hatch} x1="0" y1="0" x2="0" y2="6" />
        </pattern>
      </defs>
      <line className={styles.track} x1="0" x2="400" y1="10" y2="10" />
      <rect className={styles.estimated} x={x(sure[0]!)} y="4" width={Math.max(3, x(sure[1]! - sure[0]!))} height="12" />
      <line className={styles.likelyspan} x1={x(likely[0]!)} x2={x(likely[2]!)} y1="10" y2="10" />
      <line className={styles.likely} x1={x(likely[1]!)} x2={x(likely[1]!)} y1="1" y2="19" />
    </svg>
  );
}

function between(figures: readonly number[]): string {
  const [lo, hi] = [figures[0], figures.at(-1)];
  return lo === hi ? `${lo}` : `${lo} – ${hi}`;
}

function upper(name: string): string {
  return name.charAt(0).toUpperCase() + name.slice(1);
}
