import { useQuery } from '@tanstack/react-query';
import { getRouteApi } from '@tanstack/react-router';
import { useState } from 'react';
import { answer, api, type Label } from '../../api.ts';
import { ClientDoor } from '../../lock/ClientDoor.tsx';
import { ActionButton } from '../../ui/action/ActionButton.tsx';
import { useOffered } from '../../ui/action/offered.ts';
import layout from '../../ui/layout.module.css';
import { Page } from '../../ui/page/Page.tsx';
import text from '../../ui/text.module.css';
import { emptyLabel, LabelForm } from '../data/LabelForm.tsx';
import { Amounts } from './Amounts.tsx';
import { type Entry, keepLabel, useFoodActions } from './actions.ts';
import styles from './Food.module.css';
import { ForClient } from './ForClient.tsx';
import { History } from './History.tsx';
import { HowMuchFits } from './HowMuchFits.tsx';
import { MineralsSheet } from './Minerals.tsx';
import { PrintedPanel } from './PrintedPanel.tsx';
import { Statement } from './Statement.tsx';

const route = getRouteApi('/foods/$foodId');

/** One food: its label as printed, statement with additives, audit, ranges, how much fits, earlier labels. */
export function FoodScreen() {
  const { foodId } = route.useParams();
  // A form that is open belongs to its food.
  return <OneFood key={foodId} foodId={foodId} />;
}

function OneFood({ foodId }: { readonly foodId: string }) {
  const search = route.useSearch();
  const [entry, setEntry] = useState<Entry>();
  const query = useQuery({ queryKey: ['food', foodId], queryFn: () => answer(api.foods[':id'].$get({ param: { id: foodId } })) });
  const food = query.data;
  const actions = useFoodActions(food, setEntry);
  useOffered([actions.addLabel]);
  if (food === undefined) return <Page title="Food" isReading fault={query.error} />;
  const standing = food.history.find(({ stands }) => stands);
  const draftName = entry?.kind === 'correction' ? `label correction ${entry.label.id}` : `label newer ${foodId}`;
  return (
    <Page
      title={food.name}
      above={`${[food.maker, food.category].filter(Boolean).join(' · ')}${food.isDemo ? ' · demo, invented' : ''}`}
      actions={<ActionButton action={actions.addLabel} isMain />}
      fault={query.error}
    >
      {entry !== undefined && (
        <section className={`${layout.sheet} ${layout.stack}`} aria-labelledby="entry-title">
          <h2 id="entry-title">{entry.kind === 'read' ? 'A newer label of this food' : 'Correct a misread figure'}</h2>
          <LabelForm
            key={draftName}
            start={(entry.kind === 'correction' ? entry.label : standing)?.printed ?? { ...emptyLabel, name: food.name }}
            draftName={draftName}
            begunFrom={entry.kind === 'correction' ? entry.label.id : standing?.id}
            asksReason={entry.kind === 'correction'}
            onSave={(label, reason) => keepLabel(entry, food, label, reason)}
            onSaved={() => {
              setEntry(undefined);
              void actions.refresh();
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
            <Audit label={standing} />
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
            <HowMuchFits foodId={foodId} category={food.category} start={search} />
          </div>
        </div>
      )}
      {food.plates.length > 0 && <p className={layout.sheet}>On these plates: {food.plates.join(', ')}.</p>}
      <History food={food} correct={actions.correct} onChanged={() => void actions.refresh()} />
    </Page>
  );
}

/** What the figures of a label say against each other. */
function Audit({ label }: { readonly label: Label }) {
  const { findings, issues } = label.read;
  const unread = issues.filter(({ code }) => /-not-readable$/.test(code));
  return (
    <section className={layout.sheet} aria-labelledby="audit-title">
      <h2 id="audit-title">Audit</h2>
      {unread.length > 0 && (
        <p>
          <b>Look again.</b> {unread.length === 1 ? 'One line' : `${unread.length} lines`} could not be read and count as unknown. Correct
          the label below.
        </p>
      )}
      {findings.length === 0 && (
        <p>
          {unread.length > 0 ? 'The figures that were read agree' : 'Nothing to look at: the figures agree'} with each other and with the
          rounding rules.
        </p>
      )}
      {findings.map(({ code, message, source }) => (
        <p key={code + message}>
          <b>Look again.</b> {message} <span className={text.soft}>{source}</span>
        </p>
      ))}
    </section>
  );
}
