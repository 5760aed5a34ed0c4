import { keepPreviousData, useMutation, useQuery, useQueryClient } from '@tanstack/react-query';
import { getRouteApi, Link } from '@tanstack/react-router';
import { useState } from 'react';
import { answer, api, type KeptHandout } from '../../api.ts';
import button from '../../ui/Button.module.css';
import layout from '../../ui/layout.module.css';
import { PagePreview } from '../../ui/preview/PagePreview.tsx';
import { Told } from '../../ui/Told.tsx';
import text from '../../ui/text.module.css';
import { useLeaveGuard } from '../../ui/useLeaveGuard.ts';
import { useSettled } from '../../ui/useSettled.ts';
import { settingNames } from '../survey/surveyRequest.ts';
import { neededAt } from './ClientHandout.tsx';
import { HandoutFiles } from './HandoutFiles.tsx';
import { HandoutForm } from './HandoutForm.tsx';
import { HandoutGrade } from './HandoutGrade.tsx';
import { handoutOf, type TypedHandout, typedHandout } from './typedHandout.ts';

const route = getRouteApi('/handouts/$handoutId');

/** A handout on a topic: for readers of one setting, judged by a yardstick, without anybody's numbers. */
export function TopicHandoutScreen() {
  const { handoutId } = route.useParams();
  const all = useQuery({
    queryKey: ['handouts'],
    queryFn: () => answer(api.handouts.$get()),
  });
  const kept = all.data?.find(({ handout }) => handout.id === handoutId);
  return (
    <>
      <p className={layout.noprint}>
        <Link to="/guides">All guides and handouts</Link>
      </p>
      <Told error={all.error} />
      {all.isSuccess && kept === undefined && <p className={layout.notice}>This handout is not there any more.</p>}
      {kept !== undefined && <Editor key={handoutId} id={handoutId} start={kept} />}
    </>
  );
}

function Editor({ id, start }: { readonly id: string; readonly start: KeptHandout }) {
  const queries = useQueryClient();
  const [typed, setTyped] = useState(() => typedHandout(start.handout));
  /** What the server has of it, as this form knows it: the version that was typed on, not one that another window made since. */
  const [kept, setKept] = useState({ typed, version: start.version });
  const isKept = kept.typed === typed;
  useLeaveGuard(!isKept);
  const change = (part: Partial<TypedHandout>): void => setTyped({ ...typed, ...part });
  const workspace = useQuery({ queryKey: ['workspace'], queryFn: () => answer(api.workspace.$get()) });
  const plates = useQuery({ queryKey: ['plates'], queryFn: () => answer(api.plates.$get()) });
  const yardsticks = useQuery({ queryKey: ['yardsticks'], queryFn: () => answer(api.yardsticks.$get()) });
  const handout = useSettled({ ...handoutOf(typed), id }, 400);
  const preview = useQuery({
    queryKey: ['handout preview', handout],
    queryFn: () => answer(api['handout-previews'].$post({ json: { handout } })),
    placeholderData: keepPreviousData,
    gcTime: 0,
  });
  const keep = useMutation({
    mutationFn: (saving: TypedHandout) =>
      answer(api.handouts[':id'].$put({ param: { id }, json: { handout: handoutOf(saving), version: kept.version } })),
    onSuccess: ({ version }, saving) => {
      setKept({ typed: saving, version });
      return queries.invalidateQueries({ queryKey: ['handouts'] });
    },
  });
  const issues = preview.data?.issues ?? [];
  const src = preview.data?.previewId === undefined ? undefined : `/api/guide-previews/${preview.data.previewId}`;
  const print: Parameters<typeof PagePreview>[0]['print'] = dress => api['handout-previews'].paper.$post({ json: { handout, dress } });
  const setting = String(typed.rest.setting ?? '');
  const topic = typed.rest.topic ?? {};
  return (
    <>
      <div className={layout.spread}>
        <h1>{typed.title.trim() === '' ? 'A handout without a title' : typed.title}</h1>
        <span className={`${layout.row} ${layout.noprint}`}>
          <span className={text.soft} role="status">
            {keep.isPending ? 'Saving …' : isKept ? 'Saved' : 'Not saved yet'}
          </span>
          <button type="button" className={button.act} disabled={isKept || keep.isPending} onClick={() => keep.mutate(typed)}>
            Save
          </button>
        </span>
      </div>
      <Told error={workspace.error ?? plates.error ?? yardsticks.error ?? keep.error ?? preview.error} />
      <p className={layout.onlyprint}>To print the handout itself, save it as PDF or print its page.</p>
      <div className={`${layout.halves} ${layout.noprint}`}>
        <section className={`${layout.sheet} ${layout.stack}`} aria-label="What you write">
          <div className={layout.formgrid}>
            <label className={layout.field}>
              <span>For readers on</span>
              <select value={setting} onChange={event => change({ rest: { ...typed.rest, setting: event.target.value } })}>
                {Object.entries(settingNames).map(([key, name]) => (
                  <option key={key} value={key}>
                    {name}
                  </option>
                ))}
              </select>
            </label>
            <label className={layout.field}>
              <span>Judged by</span>
              <select
                value={String(topic.yardstickId ?? '')}
                onChange={event => change({ rest: { ...typed.rest, topic: { yardstickId: event.target.value, switchedOn: [] } } })}
              >
                {yardsticks.data?.map(({ yardstick }) => (
                  <option key={String(yardstick.id)} value={String(yardstick.id)}>
                    {String(yardstick.title)}
                  </option>
                ))}
              </select>
            </label>
          </div>
          <HandoutForm
            typed={typed}
            change={change}
            wrong={heading => neededAt(issues, heading)}
            meals={[]}
            known={workspace.data?.categories.map(({ name }) => name) ?? []}
            plates={plates.data ?? []}
            foods={preview.data?.foods ?? []}
          />
        </section>
        <div className={`${layout.stack} ${layout.beside}`}>
          <PagePreview
            src={preview.error === null ? src : undefined}
            isBuilding={preview.isPending}
            issues={issues}
            content={handout}
            print={print}
          />
          <HandoutGrade grade={preview.data?.grade} language={typed.language} />
          <HandoutFiles src={src} print={print} name={id} />
        </div>
      </div>
    </>
  );
}
