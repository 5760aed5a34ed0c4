import layout from '../../ui/layout.module.css';
import type { CarriedResult } from './carried.ts';

/** Says in the form of an assessment what was filled in from a calculator, and that it is not kept yet. */
export function CarriedNote({ carried }: { readonly carried: CarriedResult | undefined }) {
  if (carried === undefined) return null;
  return (
    <p className={layout.notice} role="status">
      From Calculators, {carried.from}: <b>{carried.words}</b>. It is filled in below and not kept until you keep the assessment.
      {carried.field.startsWith('labs.') && ' Give the day on which the blood was drawn.'}
    </p>
  );
}
