import { Field } from '../../ui/form/Field.tsx';
import layout from '../../ui/layout.module.css';
import { settingNames } from '../survey/surveyRequest.ts';
import type { TypedGuide } from './typedGuide.ts';

/** What each part of the form is given: the guide, how to change it, and what is wrong at a place of its JSON. */
export interface GuidePart {
  readonly typed: TypedGuide;
  readonly change: (change: Partial<TypedGuide>) => void;
  readonly wrong: (heading: string) => string | undefined;
}

/** The author's own words. Figures do not belong here: they are computed, and stay linked to their labels. */
export function GuideWords({ typed, change, wrong }: GuidePart) {
  return (
    <section className={`${layout.sheet} ${layout.stack}`} aria-labelledby="words-title">
      <h2 id="words-title">What you tell readers</h2>
      <Field label="Title" value={typed.title} onChange={title => change({ title })} wrong={wrong('title')} />
      <Field label="Purpose" rows={2} value={typed.purpose} onChange={purpose => change({ purpose })} wrong={wrong('purpose')} />
      <Field
        label="Who it is for, and who it is not for"
        rows={4}
        value={typed.whoItIsFor}
        onChange={whoItIsFor => change({ whoItIsFor })}
        hint="An empty line begins a new paragraph."
        wrong={wrong('whoItIsFor')}
      />
      <div className={layout.formgrid}>
        <Field label="Author" value={typed.authorName} onChange={authorName => change({ authorName })} wrong={wrong('author.name')} />
        <Field label="Credentials" value={typed.credentials} onChange={credentials => change({ credentials })} />
      </div>
      <details>
        <summary>What differs by treatment</summary>
        <div className={layout.stack}>
          {Object.entries(settingNames).map(([setting, name]) => (
            <Field
              key={setting}
              label={name.charAt(0).toUpperCase() + name.slice(1)}
              rows={2}
              value={typed.settingsNotes[setting] ?? ''}
              onChange={note => change({ settingsNotes: { ...typed.settingsNotes, [setting]: note } })}
            />
          ))}
        </div>
      </details>
    </section>
  );
}
