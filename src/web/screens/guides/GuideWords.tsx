import { Field } from '../../ui/form/Field.tsx';
import type { Typed } from '../../ui/form/typed.ts';
import layout from '../../ui/layout.module.css';
import { settingNames } from '../survey/surveyRequest.ts';
import type { TypedGuide } from './typedGuide.ts';

/** The author's own words. Figures do not belong here: they are computed, and stay linked to their labels. */
export function GuideWords({ typed }: { readonly typed: Typed<TypedGuide> }) {
  const author = typed.part('author');
  return (
    <section className={`${layout.sheet} ${layout.stack}`} aria-labelledby="words-title">
      <h2 id="words-title">What you tell readers</h2>
      <Field label="Title" {...typed.field('title')} />
      <Field label="Purpose" rows={2} {...typed.field('purpose')} />
      <Field
        label="Who it is for, and who it is not for"
        rows={4}
        hint="An empty line begins a new paragraph."
        {...typed.field('whoItIsFor')}
      />
      <div className={layout.formgrid}>
        <Field label="Author" {...author.field('name')} />
        <Field label="Credentials" {...author.field('credentials')} />
      </div>
      <details>
        <summary>What differs by treatment</summary>
        <div className={layout.stack}>
          {typed.rows('settingsNotes').each.map(row => (
            <Field key={row.values.setting} label={settingLabel(row.values.setting)} rows={2} {...row.field('note')} />
          ))}
        </div>
      </details>
    </section>
  );
}

function settingLabel(setting: string): string {
  const name = Object.entries(settingNames).find(([key]) => key === setting)?.[1] ?? setting;
  return name.charAt(0).toUpperCase() + name.slice(1);
}
