import { useQuery } from '@tanstack/react-query';
import { useEffect, useRef, useState } from 'react';
import { problemOf } from '../../api.ts';
import { Choice } from '../form/Choice.tsx';
import type { Choices } from '../form/choices.ts';
import { Tick } from '../form/Ticks.tsx';
import layout from '../layout.module.css';
import { Told } from '../Told.tsx';
import styles from './preview.module.css';

export interface Dress {
  readonly paper: 'letter' | 'a4';
  readonly largePrint: boolean;
}

const papers: Choices<Dress['paper']> = [
  ['letter', 'Letter'],
  ['a4', 'A4'],
];

/** Asks for the page as PDF. */
export type Print = (
  dress: Dress,
) => Promise<{ readonly ok: boolean; json: () => Promise<unknown>; arrayBuffer: () => Promise<ArrayBuffer> }>;

/** The sheets that a printer will give, made by the browser that makes the PDF and drawn here. `content` tells one state of the page from another. */
export function PaperPages({ content, print }: { readonly content: unknown; readonly print: Print }) {
  const [paper, setPaper] = useState<Dress['paper']>('letter');
  const [largePrint, setLargePrint] = useState(false);
  const pdf = useQuery({
    queryKey: ['page on paper', content, paper, largePrint],
    queryFn: async () => {
      const response = await print({ paper, largePrint });
      if (!response.ok) throw await problemOf(response);
      return new Uint8Array(await response.arrayBuffer());
    },
    gcTime: 0,
    refetchOnWindowFocus: false,
  });
  return (
    <>
      <div className={layout.row}>
        <Choice label="Paper" choices={papers} value={paper} onChange={setPaper} />
        <Tick label="Large print" value={largePrint} onChange={setLargePrint} />
      </div>
      <Told error={pdf.error} />
      {pdf.isFetching && <p role="status">Printing …</p>}
      {pdf.data !== undefined && <Sheets pdf={pdf.data} />}
    </>
  );
}

function Sheets({ pdf }: { readonly pdf: Uint8Array }) {
  const place = useRef<HTMLDivElement>(null);
  const [error, setError] = useState<unknown>();
  useEffect(() => {
    const box = place.current!;
    let isWanted = true;
    const draw = async (): Promise<void> => {
      const { drawPages } = await import('./drawPages.ts');
      await drawPages(pdf, box, () => isWanted);
    };
    draw().catch(setError);
    return () => {
      isWanted = false;
    };
  }, [pdf]);
  return (
    <>
      <Told error={error} />
      <div className={styles.papers} ref={place} />
    </>
  );
}
