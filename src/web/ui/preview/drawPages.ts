import { GlobalWorkerOptions, getDocument } from 'pdfjs-dist';
import workerUrl from 'pdfjs-dist/build/pdf.worker.min.mjs?url';

GlobalWorkerOptions.workerSrc = workerUrl;

/** Draws every page of a PDF into a box, one below the other, as wide as the box; stops when it is not wanted any more. */
export async function drawPages(pdf: Uint8Array, box: HTMLElement, isWanted: () => boolean): Promise<void> {
  // The reader takes the bytes away from whoever hands them over.
  const reading = getDocument({ data: pdf.slice() });
  const document = await reading.promise;
  const canvases: HTMLCanvasElement[] = [];
  for (let number = 1; number <= document.numPages && isWanted(); number++) {
    const page = await document.getPage(number);
    const natural = page.getViewport({ scale: 1 });
    const viewport = page.getViewport({ scale: (box.clientWidth * devicePixelRatio) / natural.width });
    const canvas = globalThis.document.createElement('canvas');
    canvas.width = viewport.width;
    canvas.height = viewport.height;
    canvas.setAttribute('role', 'img');
    canvas.setAttribute('aria-label', `Sheet ${number} of ${document.numPages}`);
    await page.render({ canvas, viewport }).promise;
    canvases.push(canvas);
    if (isWanted()) box.replaceChildren(...canvases);
  }
  await reading.destroy();
}
