import { useQuery } from '@tanstack/react-query';
import { Link } from '@tanstack/react-router';
import { answer, api } from '../../api.ts';
import layout from '../../ui/layout.module.css';
import { Told } from '../../ui/Told.tsx';
import text from '../../ui/text.module.css';
import { VerdictMark } from '../../ui/VerdictMark.tsx';
import { avoidedWords } from '../clients/avoidedWords.ts';

/** This food as it is judged for the client one came from: the same judge, plate and meal as on the client's page. */
export function ForClient({
  foodId,
  clientId,
  plate,
  meal,
  useEstimates,
}: {
  readonly foodId: string;
  readonly clientId: string;
  readonly plate: string;
  readonly meal: string;
  readonly useEstimates: boolean;
}) {
  const client = useQuery({
    queryKey: ['client', clientId, undefined],
    queryFn: () => answer(api.clients[':id'].$get({ param: { id: clientId }, query: {} })),
    gcTime: 0,
  });
  const plates = useQuery({ queryKey: ['plates'], queryFn: () => answer(api.plates.$get()) });
  const onPlate = plates.data?.find(({ plate: one }) => one.id === plate)?.plate.title;
  const fits = useQuery({
    queryKey: ['client', clientId, 'fits', foodId, plate, meal, useEstimates],
    queryFn: () =>
      answer(api.clients[':id'].fits.$post({ param: { id: clientId }, json: { foodId, served: [{ plate }], meal, useEstimates } })),
    gcTime: 0,
  });
  const row = fits.data?.rows[0];
  const hasAmount = row !== undefined && row.offer !== 'never' && row.offer !== 'ask';
  return (
    <section className={layout.sheet} aria-labelledby="for-client-title">
      <h2 id="for-client-title">
        For {client.data?.name ?? 'this client'}, {meal}
      </h2>
      {onPlate !== undefined && <p className={`${text.small} ${text.soft}`}>Eaten on the plate “{String(onPlate)}”.</p>}
      <Told error={client.error ?? fits.error} />
      {fits.data?.none !== undefined && <p className={layout.notice}>{fits.data.none}</p>}
      {row !== undefined && (
        <>
          <p>
            {row.avoided === undefined ? <VerdictMark word={row.verdict} /> : <span className={text.tag}>{avoidedWords[row.avoided]}</span>}{' '}
            {row.closeCall && <span className={text.close}>close call</span>}{' '}
            {row.estimated && <span className={text.close}>estimated</span>} {!hasAmount && <b>{row.why}</b>}
            {hasAmount && (
              <>
                <b>Fits in this meal: {row.inMeal}.</b> Fits in a day: {row.inDay}.
              </>
            )}
          </p>
          <ul className={text.ways}>
            {row.settles !== undefined && <li>{row.settles}</li>}
            {row.fluid !== undefined && <li>This plate {row.fluid} of fluid.</li>}
            {row.marks.map(mark => (
              <li key={mark}>{mark}</li>
            ))}
            {row.reasons
              .filter(({ kind, text }) => kind === 'nutrient' && text !== row.why)
              .map(({ text }) => (
                <li key={text}>{text}</li>
              ))}
          </ul>
        </>
      )}
      {fits.data !== undefined && fits.data.tests.length > 0 && (
        <p className={`${text.small} ${text.soft}`}>{fits.data.tests.join('; ')}.</p>
      )}
      <p className={layout.noprint}>
        <Link to="/clients/$clientId" params={{ clientId }}>
          Back to the client
        </Link>
      </p>
    </section>
  );
}
