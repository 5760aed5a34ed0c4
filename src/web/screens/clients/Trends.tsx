import type { Client } from '../../api.ts';
import { Trend } from '../../ui/Trend.tsx';

/** Results over time. */
export function Trends({ trends }: { readonly trends: NonNullable<Client['trends']> }) {
  if (trends.length === 0) return null;
  return (
    <div>
      <h3>Over time</h3>
      {trends.map(({ analyte, name, unit, points, bands }) => (
        <Trend
          key={analyte}
          label={name}
          unit={unit}
          points={points.map(({ on, value }) => ({ day: on, value }))}
          bands={bands.map(({ range, source }) => ({ range, says: source }))}
        />
      ))}
    </div>
  );
}
