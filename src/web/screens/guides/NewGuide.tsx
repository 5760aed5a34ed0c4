import { useMutation, useQuery } from '@tanstack/react-query';
import { useNavigate } from '@tanstack/react-router';
import { useState } from 'react';
import { answer, api } from '../../api.ts';
import button from '../../ui/Button.module.css';
import { focusFirstField } from '../../ui/focusFirstField.ts';
import { Field } from '../../ui/form/Field.tsx';
import layout from '../../ui/layout.module.css';
import { Told } from '../../ui/Told.tsx';
import { Sentence } from '../survey/Sentence.tsx';
import { surveyRequest } from '../survey/surveyRequest.ts';
import type { SurveySearch } from '../survey/surveySearch.ts';

/** Begins a guide: which survey it is made from, its title, and who writes it. Everything else is written in its screen. */
export function NewGuide({ start, onCancel }: { readonly start: SurveySearch; readonly onCancel: () => void }) {
  const navigate = useNavigate();
  const [search, setSearch] = useState(start);
  const [title, setTitle] = useState('');
  const [author, setAuthor] = useState('');
  const [credentials, setCredentials] = useState('');
  const workspace = useQuery({ queryKey: ['workspace'], queryFn: () => answer(api.workspace.$get()) });
  const plates = useQuery({ queryKey: ['plates'], queryFn: () => answer(api.plates.$get()) });
  const yardsticks = useQuery({ queryKey: ['yardsticks'], queryFn: () => answer(api.yardsticks.$get()) });
  const categories = workspace.data?.categories.map(({ name }) => name) ?? [];
  const request = surveyRequest(search, { category: categories[0] ?? '', plates: plates.data });
  const begin = useMutation({
    mutationFn: async () => {
      const { category, plate, yardstick, setting, portion, switchedOn = [] } = request;
      const id = fileName(title);
      const yardstickTitle = String(yardsticks.data?.find(one => one.yardstick.id === yardstick)?.yardstick.title ?? yardstick);
      const guide = {
        title,
        purpose: `Foods of the category ${category} that are ${yardstickTitle}.`,
        whoItIsFor: 'Adults with chronic kidney disease. Ask your kidney team which limits are yours.',
        publishedOn: new Date().toLocaleDateString('sv'),
        author: { name: author, ...(credentials === '' ? {} : { credentials }) },
        survey: {
          category,
          plateId: plate,
          yardstickId: yardstick,
          switchedOn,
          ...(setting === undefined ? {} : { setting }),
          ...(portion !== undefined && 'servings' in portion ? { servings: portion.servings } : {}),
        },
      };
      await answer(api.guides[':id'].$put({ param: { id }, json: { guide, version: null } }));
      return id;
    },
    onSuccess: guideId => navigate({ to: '/guides/$guideId', params: { guideId } }),
  });
  return (
    <form
      className={`${layout.sheet} ${layout.stack} ${layout.noprint}`}
      ref={focusFirstField}
      onSubmit={event => {
        event.preventDefault();
        begin.mutate();
      }}
    >
      <h2>A new guide</h2>
      <Sentence
        request={request}
        portionText="the plate’s portion"
        categories={categories}
        plates={plates.data ?? []}
        yardsticks={yardsticks.data ?? []}
        onChange={change => setSearch({ ...search, ...change })}
      />
      <Field label="Title, as readers will see it" value={title} onChange={setTitle} />
      <div className={layout.formgrid}>
        <Field label="Author" value={author} onChange={setAuthor} />
        <Field label="Credentials (MS, RDN)" value={credentials} onChange={setCredentials} />
      </div>
      <Told error={workspace.error ?? plates.error ?? yardsticks.error ?? begin.error} />
      {categories.length === 0 && workspace.isSuccess && <p>No label with a category is on the shelf yet. Add labels under Data first.</p>}
      <p className={layout.row}>
        <button type="submit" className={button.act} disabled={begin.isPending || title.trim() === '' || categories.length === 0}>
          Begin
        </button>
        <button type="button" className={button.quiet} onClick={onCancel}>
          Cancel
        </button>
      </p>
    </form>
  );
}

/** The id names the guide's files: small letters, digits and hyphens of its title, with letters that tell two guides of one title apart. */
function fileName(title: string): string {
  const plain = title
    .normalize('NFKD')
    .toLowerCase()
    .replace(/[^a-z0-9]+/g, '-')
    .slice(0, 60)
    .replace(/^-|-$/g, '');
  return [plain, crypto.randomUUID().slice(0, 4)].filter(Boolean).join('-');
}
