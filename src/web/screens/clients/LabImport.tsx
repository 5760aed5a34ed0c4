import { useState } from 'react';
import { answer, api } from '../../api.ts';
import { FileChoice } from '../../ui/FileChoice.tsx';
import { Told } from '../../ui/Told.tsx';
import { type LabDraft, labDraftOf } from './rowDrafts.ts';

/** Results from a file: CSV with a heading row, or FHIR R4 Observations. What could not be read is told, nothing is guessed. */
export function LabImport({ onLabs }: { readonly onLabs: (labs: readonly LabDraft[]) => void }) {
  const [told, setTold] = useState<readonly string[]>([]);
  const [error, setError] = useState<unknown>();
  const read = async (file: File): Promise<void> => {
    try {
      setError(undefined);
      const { labs, issues } = await answer(api.clients.labs.$post({ json: { text: await file.text() } }));
      onLabs(labs.map(labDraftOf));
      setTold([labs.length === 1 ? '1 result was read.' : `${labs.length} results were read.`, ...issues]);
    } catch (problem) {
      setError(problem);
    }
  };
  return (
    <div>
      <FileChoice label="Read results from a file (CSV or FHIR R4)" accept=".csv,.tsv,.txt,.json" onChoose={file => void read(file)} />
      {told.length > 0 && (
        <ul role="status">
          {told.map(one => (
            <li key={one}>{one}</li>
          ))}
        </ul>
      )}
      <Told error={error} />
    </div>
  );
}
