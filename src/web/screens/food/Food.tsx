import { useQuery, useQueryClient } from '@tanstack/react-query';
import { getRouteApi } from '@tanstack/react-router';
import { useState } from 'react';
import { answer, api, type Label } from '../../api.ts';
import { ClientDoor } from '../../lock/ClientDoor.tsx';
import button from '../../ui/Button.module.css';
import layout from '../../ui/layout.module.css';
import { Told } from '../../ui/Told.tsx';
import text from '../../ui/text.module.css';
import { emptyLabel, LabelForm } from '../data/LabelForm.tsx';
import { Amounts } from './Amounts.tsx';
import styles from './Food.module.css';
import { ForClient } from './ForClient.tsx';
import { History } from './History.tsx';
import { HowMuchFits } from './HowMuchFits.tsx';
import { MineralsSheet } from './Minerals.tsx';
import { PrintedPanel } from './PrintedPanel.tsx';
import { Statement } from './Statement.tsx';

const route = getRouteApi('/foods/$foodId');

/** What an entry into the form would do: a newer label, or mending a misread figure of one. */
type Entry = { readonly kind: 'read' } | { readonly kind: 'correction'; readonly label: Label };

/** One food: its label as printed, statement with additives, audit, ranges, how much fits, earlier labels. */
export function FoodScreen() {
  const { foodId } = route.useParams();
  const search = route.useSearch();
  const queries = useQueryClient();
  const [entry, setEntry] = useState<Entry>();
  const food = useQuery({ queryKey: ['food', foodId], queryFn: () => answer(api.foods[':id'].$get({ param: { id: foodId } })) });
  const refresh = (): void => void queries.invalidateQueries();
  if (food.data === undefined) {
    return (
      <>
        <h1>Food</h1>
        {food.error === null ? <p role="status">Reading …</p> : <Told error={food.error} />}
      </>
    );
  }
  const standing = food.data.history.find(({ stands }) => stands);
  return (
    <>
      <div className={layout.spread}>
        <div>
          <span className={text.soft}>
            {[food.data.maker, food.data.category].filter(Boolean).join(' · ')}
            {food.data.isDemo ? ' · demo, invented' : ''}
          </span>
          <h1>{food.data.name}</h1>
        </div>
        <button type="button" className={`${button.act} ${layout.noprint}`} onClick={() => setEntry({ kind: 'read' })}>
          Add a newer label
        </button>
      </div>
      {entry !== undefined && (
        <section className={`${layout.sheet} ${layout.stack}`} aria-labelledby="entry-title">
          <h2 id="entry-title">{entry.kind === 'read' ? 'A newer label of this food' : 'Correct a misread figure'}</h2>
          <LabelForm
            start={(entry.kind === 'correction' ? entry.label : standing)?.printed ?? { ...emptyLabel, name: food.data.name }}
            draftName={entry.kind === 'correction' ? `label correction ${entry.label.id}` : `label newer ${foodId}`}
            asksReason={entry.kind === 'correction'}
            onSave={(label, reason) => {
              const correction =
                entry.kind === 'correction'
                  ? { kind: 'correction' as const, correctsLabelId: entry.label.id, reason }
                  : { kind: 'read' as const };
              return answer(
                api.foods[':id'].labels.$post({ param: { id: foodId }, json: { version: food.data.version, label, ...correction } }),
              );
            }}
            onSaved={() => {
              setEntry(undefined);
              refresh();
            }}
            onCancel={() => setEntry(undefined)}
          />
        </section>
      )}
      {standing === undefined ? (
        <p className={layout.notice}>No label of this food stands: all were withdrawn. Add a newer label to judge it again.</p>
      ) : (
        <div className={styles.foodcols}>
          <div className={layout.stack}>
            <PrintedPanel label={standing} />
            <section className={layout.sheet} aria-labelledby="audit-title">
              <h2 id="audit-title">Audit</h2>
              {standing.read.findings.length === 0 ? (
                <p>Nothing to look at: the figures agree with each other and with the rounding rules.</p>
              ) : null}
              {standing.read.findings.map(({ code, message, source }) => (
                <p key={code + message}>
                  <b>Look again.</b> {message} <span className={text.soft}>{source}</span>
                </p>
              ))}
            </section>
          </div>
          <div className={layout.stack}>
            {search.client !== undefined && search.plate !== undefined && search.meal !== undefined && (
              <ClientDoor>
                <ForClient
                  foodId={foodId}
                  clientId={search.client}
                  plate={search.plate}
                  meal={search.meal}
                  useEstimates={search.useEstimates === true}
                />
              </ClientDoor>
            )}
            <Statement label={standing} />
            <Amounts label={standing} />
            <MineralsSheet foodId={foodId} labelId={standing.id} />
            <HowMuchFits foodId={foodId} category={food.data.category} start={search} />
          </div>
        </div>
      )}
      {food.data.plates.length > 0 && <p className={layout.sheet}>On these plates: {food.data.plates.join(', ')}.</p>}
      <History food={food.data} onCorrect={label => setEntry({ kind: 'correction', label })} onChanged={refresh} />
    </>
  );
}
