import { keepPreviousData, useQuery } from '@tanstack/react-query';
import { useRef, useState } from 'react';
import { evenPattern } from '#core/client/record/record.ts';
import type { HandoutTyped } from '#core/handout/handoutFromJson.ts';
import { answer, api, type Client } from '../../api.ts';
import { ActionButton } from '../../ui/action/ActionButton.tsx';
import { useOffered } from '../../ui/action/offered.ts';
import { Draft } from '../../ui/draft/Draft.tsx';
import { Tick } from '../../ui/form/Ticks.tsx';
import { typedOf } from '../../ui/form/typed.ts';
import layout from '../../ui/layout.module.css';
import { neededAt } from '../../ui/preview/neededAt.ts';
import { PagePreview } from '../../ui/preview/PagePreview.tsx';
import type { Print } from '../../ui/preview/PaperPages.tsx';
import { Told } from '../../ui/Told.tsx';
import text from '../../ui/text.module.css';
import { useLast } from '../../ui/useLast.ts';
import { useSettled } from '../../ui/useSettled.ts';
import { openHandout } from './actions.ts';
import { HandoutFiles } from './HandoutFiles.tsx';
import { HandoutForm } from './HandoutForm.tsx';
import { HandoutGrade } from './HandoutGrade.tsx';
import { handoutOf } from './typedHandout.ts';
import { useClientHandout } from './useClientHandout.ts';

/** The handout of one client, opened when it is wanted. */
export function ClientHandout({ client, onChanged }: { readonly client: Client; readonly onChanged: () => Promise<void> }) {
  const [isOpen, setOpen] = useState(false);
  const box = useRef<HTMLDetailsElement>(null);
  useOffered(isOpen ? [] : [openHandout(() => setOpen(true), box)]);
  const kept = useQuery({
    queryKey: ['client', client.id, 'handout'],
    queryFn: () => answer(api.clients[':id'].handout.$get({ param: { id: client.id } })),
    enabled: isOpen,
    gcTime: 0,
    // The form holds what was typed; it is read once, when it opens.
    staleTime: Number.POSITIVE_INFINITY,
  });
  return (
    <details ref={box} className={`${layout.sheet} ${layout.noprint}`} open={isOpen} onToggle={event => setOpen(event.currentTarget.open)}>
      <summary>Handout</summary>
      <Told error={kept.error} />
      {kept.data !== undefined && <Editor client={client} start={kept.data.handout ?? fresh(client)} onChanged={onChanged} />}
    </details>
  );
}

function Editor(given: { readonly client: Client; readonly start: HandoutTyped; readonly onChanged: () => Promise<void> }) {
  const { client, start, onChanged } = given;
  const param = { id: client.id };
  const { values, change, draft, keep, isKept, fault } = useClientHandout(client, start, onChanged);
  useOffered([keep]);
  const [useEstimates, setUseEstimates] = useState(false);
  const workspace = useQuery({ queryKey: ['workspace'], queryFn: () => answer(api.workspace.$get()) });
  const plates = useQuery({ queryKey: ['plates'], queryFn: () => answer(api.plates.$get()) });
  const handout = useSettled(handoutOf(values), 400);
  const preview = useQuery({
    queryKey: ['client', client.id, 'handout preview', client.version, handout, useEstimates],
    queryFn: () => answer(api.clients[':id'].handout.$post({ param, json: { handout, useEstimates } })),
    placeholderData: keepPreviousData,
    gcTime: 0,
  });
  const issues = preview.data?.issues ?? [];
  // While something is to be mended the foods are not judged; those that were stay in sight.
  const judged = useLast(preview.data?.previewId === undefined ? undefined : preview.data.foods);
  const src = preview.data?.previewId === undefined ? undefined : `/api/client-previews/${preview.data.previewId}`;
  const print: Print = dress => api.clients[':id']['handout-paper'].$post({ param, json: { handout, useEstimates, dress } });
  return (
    <div className={layout.halves}>
      <div className={layout.stack}>
        <p className={text.soft}>
          Numbers come from the signed prescription, foods from the shelf. The client’s name is not on it unless you type it.
        </p>
        <Draft draft={draft} />
        <HandoutForm
          typed={typedOf(values, change, neededAt(issues))}
          meals={(client.mealPattern ?? evenPattern).map(({ name }) => name)}
          known={workspace.data?.categories.map(({ name }) => name) ?? []}
          plates={plates.data ?? []}
          foods={judged ?? []}
        />
        <Tick
          label="Use estimated phosphorus and potassium, at the safe end, where the label does not print them"
          value={useEstimates}
          onChange={setUseEstimates}
        />
        <p className={layout.row}>
          <ActionButton action={keep} isMain />
          <span role="status">{isKept ? 'Kept with the record.' : ''}</span>
        </p>
        <Told error={workspace.error ?? plates.error ?? fault} />
      </div>
      <div className={`${layout.stack} ${layout.beside}`}>
        <Told error={preview.error} />
        {preview.data?.cautions.map(caution => (
          <p className={layout.notice} key={caution}>
            {caution}
          </p>
        ))}
        <PagePreview
          src={preview.error === null ? src : undefined}
          isBuilding={preview.isPending}
          issues={issues}
          content={[client.id, handout, useEstimates]}
          print={print}
        />
        <HandoutGrade grade={preview.data?.grade} language={values.language} />
        <HandoutFiles src={src} print={print} name="handout" />
      </div>
    </div>
  );
}

/** A first handout: who signed writes it. */
function fresh({ prescriptions }: Client): HandoutTyped {
  const [name = '', ...credentials] = (prescriptions[0]?.signedBy ?? '').split(', ');
  return { author: { name, ...(credentials.length === 0 ? {} : { credentials: credentials.join(', ') }) } };
}
