import { keepPreviousData, useMutation, useQuery } from '@tanstack/react-query';
import { useState } from 'react';
import { evenPattern } from '#core/client/record/record.ts';
import { answer, api, type Client, type HandoutPreview } from '../../api.ts';
import button from '../../ui/Button.module.css';
import layout from '../../ui/layout.module.css';
import { PagePreview } from '../../ui/preview/PagePreview.tsx';
import { Told } from '../../ui/Told.tsx';
import text from '../../ui/text.module.css';
import { useLeaveGuard } from '../../ui/useLeaveGuard.ts';
import { useSettled } from '../../ui/useSettled.ts';
import { HandoutFiles } from './HandoutFiles.tsx';
import { HandoutForm } from './HandoutForm.tsx';
import { HandoutGrade } from './HandoutGrade.tsx';
import { handoutOf, type Json, type TypedHandout, typedHandout } from './typedHandout.ts';

/** The handout of one client, opened when it is wanted. */
export function ClientHandout({ client, onChanged }: { readonly client: Client; readonly onChanged: () => Promise<void> }) {
  const [isOpen, setOpen] = useState(false);
  const kept = useQuery({
    queryKey: ['client', client.id, 'handout'],
    queryFn: () => answer(api.clients[':id'].handout.$get({ param: { id: client.id } })),
    enabled: isOpen,
    gcTime: 0,
    // The form holds what was typed; it is read once, when it opens.
    staleTime: Number.POSITIVE_INFINITY,
  });
  return (
    <details className={`${layout.sheet} ${layout.noprint}`} onToggle={event => setOpen(event.currentTarget.open)}>
      <summary>Handout</summary>
      <Told error={kept.error} />
      {kept.data !== undefined && <Editor client={client} start={kept.data.handout ?? fresh(client)} onChanged={onChanged} />}
    </details>
  );
}

function Editor(given: { readonly client: Client; readonly start: Json; readonly onChanged: () => Promise<void> }) {
  const { client, start, onChanged } = given;
  const param = { id: client.id };
  const [typed, setTyped] = useState(() => typedHandout(start));
  const [kept, setKept] = useState(typed);
  useLeaveGuard(kept !== typed);
  const [useEstimates, setUseEstimates] = useState(false);
  const workspace = useQuery({ queryKey: ['workspace'], queryFn: () => answer(api.workspace.$get()) });
  const plates = useQuery({ queryKey: ['plates'], queryFn: () => answer(api.plates.$get()) });
  const handout = useSettled(handoutOf(typed), 400);
  const preview = useQuery({
    queryKey: ['client', client.id, 'handout preview', client.version, handout, useEstimates],
    queryFn: () => answer(api.clients[':id'].handout.$post({ param, json: { handout, useEstimates } })),
    placeholderData: keepPreviousData,
    gcTime: 0,
  });
  const keep = useMutation({
    mutationFn: (saving: TypedHandout) =>
      answer(api.clients[':id'].handout.$put({ param, json: { handout: handoutOf(saving), version: client.version } })),
    onSuccess: (_, saving) => {
      setKept(saving);
      return onChanged();
    },
  });
  const change = (part: Partial<TypedHandout>): void => setTyped({ ...typed, ...part });
  const issues = preview.data?.issues ?? [];
  const src = preview.data?.previewId === undefined ? undefined : `/api/client-previews/${preview.data.previewId}`;
  const print: Parameters<typeof PagePreview>[0]['print'] = dress =>
    api.clients[':id']['handout-paper'].$post({ param, json: { handout, useEstimates, dress } });
  return (
    <div className={layout.halves}>
      <div className={layout.stack}>
        <p className={text.soft}>
          Numbers come from the signed prescription, foods from the shelf. The client’s name is not on it unless you type it.
        </p>
        <HandoutForm
          typed={typed}
          change={change}
          wrong={heading => neededAt(issues, heading)}
          meals={(client.mealPattern ?? evenPattern).map(({ name }) => name)}
          known={workspace.data?.categories.map(({ name }) => name) ?? []}
          plates={plates.data ?? []}
          foods={preview.data?.foods ?? []}
        />
        <label className={layout.row}>
          <input type="checkbox" checked={useEstimates} onChange={event => setUseEstimates(event.target.checked)} />
          <span>Use estimated phosphorus and potassium, at the safe end, where the label does not print them</span>
        </label>
        <p className={layout.row}>
          <button type="button" className={button.act} disabled={keep.isPending} onClick={() => keep.mutate(typed)}>
            Keep this for the next time
          </button>
          <span role="status">{keep.isSuccess && kept === typed ? 'Kept with the record.' : ''}</span>
        </p>
        <Told error={workspace.error ?? plates.error ?? keep.error} />
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
        <HandoutGrade grade={preview.data?.grade} language={typed.language} />
        <HandoutFiles src={src} print={print} name="handout" />
      </div>
    </div>
  );
}

export function neededAt(issues: HandoutPreview['issues'], heading: string): string | undefined {
  const issue = issues.find(({ place }) => place.heading === heading);
  return issue === undefined ? undefined : `Needed: ${issue.expected}.`;
}

/** A first handout: who signed writes it. */
function fresh({ prescriptions }: Client): Json {
  const [name = '', ...credentials] = (prescriptions[0]?.signedBy ?? '').split(', ');
  return { author: { name, ...(credentials.length === 0 ? {} : { credentials: credentials.join(', ') }) } };
}
