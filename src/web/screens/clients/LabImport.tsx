import { FileChoice } from '../../ui/FileChoice.tsx';
import { Told } from '../../ui/Told.tsx';
import { useLabImport } from './assessmentActions.ts';
import type { TypedLab } from './typedResults.ts';

/** Results from a file: CSV with a heading row, or FHIR R4 Observations. What could not be read is told, nothing is guessed. */
export function LabImport({ onLabs }: { readonly onLabs: (labs: readonly TypedLab[]) => void }) {
  const { read, told, fault } = useLabImport(onLabs);
  return (
    <div>
      <FileChoice label="Read results from a file (CSV or FHIR R4)" accept=".csv,.tsv,.txt,.json" onChoose={read} />
      {told.length > 0 && (
        <ul role="status">
          {told.map(one => (
            <li key={one}>{one}</li>
          ))}
        </ul>
      )}
      <Told error={fault} />
    </div>
  );
}
