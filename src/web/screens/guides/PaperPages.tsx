import { useQuery } from '@tanstack/react-query';
import { useEffect, useRef, useState } from 'react';
import { api, problemOf } from '../../api.ts';
import { Told } from '../../ui/Told.tsx';
import type { Json } from './typedGuide.ts';

/** The sheets that a printer will give, made by the browser that makes the PDF and drawn here. */
export function PaperPages({ guideId, guide }: { readonly guideId: string; readonly guide: Json }) {
  const [paper, setPaper] = useState<'letter' | 'a4'>('letter');
  const [largePrint, setLargePrint] = useState(false);
  const pdf = useQuery({
    queryKey: ['guide paper', guideId, guide, paper, largePrint],
    queryFn: async () => {
      const response = await api['guide-previews'].paper.$post({
        json: { guide: guide as Record<string, unknown>, guideId, dress: { paper, largePrint } },
      });
      if (!response.ok) throw await problemOf(response);
      return new Uint8Array(await response.arrayBuffer());
    },
    gcTime: 0,
    refetchOnWindowFocus: false,
  });
  return (
    <>
      <div className="row">
        <label className="row">
          <span>Paper</span>
          <select value={paper} onChange={event => setPaper(event.target.value as typeof paper)}>
            <option value="letter">Letter</option>
            <option value="a4">A4</option>
          </select>
        </label>
        <label className="row">
          <input type="checkbox" checked={largePrint} onChange={event => setLargePrint(event.target.checked)} />
          <span>Large print</span>
        </label>
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
      <div className="papers" ref={place} />
    </>
  );
}
