import { Link } from '@tanstack/react-router';
import { useState } from 'react';
import type { Formula } from '../../api.ts';
import { Field } from '../../ui/form/Field.tsx';
import layout from '../../ui/layout.module.css';
import { Page } from '../../ui/page/Page.tsx';
import text from '../../ui/text.module.css';
import styles from './Calculators.module.css';
import { useFormulas } from './useFormulas.ts';

/** The formulas of the trade by subject, with a field that narrows them down. */
export function CalculatorsScreen() {
  const formulas = useFormulas();
  const [wanted, setWanted] = useState('');
  const found = (formulas.data ?? []).filter(one => isWanted(one, wanted));
  const subjects = [...new Set(found.map(({ subject }) => subject))];
  return (
    <Page
      title="Calculators"
      about="Each shows its units, its math and where it comes from, and is worked out while you type. Nothing that is typed here is kept."
      isReading={formulas.isPending}
      fault={formulas.error}
    >
      <div className={`${layout.noprint} ${styles.filter}`}>
        <Field label="Find a formula" type="search" placeholder="eGFR, potassium, dry weight …" value={wanted} onChange={setWanted} />
        <p className={`${text.small} ${text.soft}`} role="status">
          {formulas.data !== undefined && `${found.length} of ${formulas.data.length} formulas`}
        </p>
      </div>
      {formulas.data !== undefined && found.length === 0 && <p>No formula has these words. Try one of them alone, or a nutrient.</p>}
      <div className={styles.subjects}>
        {subjects.map(subject => (
          <section className={layout.sheet} key={subject} aria-labelledby={idOf(subject)}>
            <h2 id={idOf(subject)}>{capital(subject)}</h2>
            <ul className={`${layout.plain} ${styles.list}`}>
              {found
                .filter(one => one.subject === subject)
                .map(({ name, title, purpose }) => (
                  <li key={name}>
                    <Link to="/calculators/$name" params={{ name }}>
                      {title}
                    </Link>
                    <span className={text.why}>{purpose}</span>
                  </li>
                ))}
            </ul>
          </section>
        ))}
      </div>
    </Page>
  );
}

/** Every word is somewhere in what the formula is called, is for, or asks: in full, by its initials ("BMI"), or without its signs ("ktv"). */
function isWanted({ name, title, purpose, subject, inputs }: Formula, wanted: string): boolean {
  const initials = title
    .split(/\W+/)
    .map(word => word.charAt(0))
    .join('');
  const full = [name, title, initials, purpose, subject, ...inputs.map(({ label }) => label)].join(' ').toLowerCase();
  const searched = `${full} ${full.replace(/[^a-z0-9 ]/g, '')}`;
  return wanted
    .toLowerCase()
    .split(/\s+/)
    .every(word => searched.includes(word));
}

export function capital(words: string): string {
  return words.charAt(0).toUpperCase() + words.slice(1);
}

function idOf(subject: string): string {
  return `subject-${subject.replaceAll(' ', '-')}`;
}
