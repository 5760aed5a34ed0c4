import { complaintsOf, launchBrowser, startWorkbench, violationsOf } from './workbench.ts';

const w = await startWorkbench();
const b = await launchBrowser();
try {
  const page = await (await b.newContext({ viewport: { width: 1280, height: 900 } })).newPage();
  await w.letIn(page.context());
  const complaints = complaintsOf(page);
  await page.goto(`${w.address}/clients`);
  await page.getByRole('link', { name: 'M. T. (demo)' }).click();
  await page.locator('summary', { hasText: /^Chart note$/ }).click();
  await page.getByRole('button', { name: 'Write a note' }).click();
  await page.getByRole('textbox', { name: 'Diagnosis' }).waitFor();
  await page.waitForTimeout(800);
  const shot = async (n: string, el = true) => {
    const d = page.locator('details', { hasText: 'Chart note' }).first();
    if (el) await d.screenshot({ path: `/tmp/n-${n}.png` });
    else await page.screenshot({ path: `/tmp/n-${n}.png`, fullPage: true });
  };
  await shot('full-1280');
  console.log(await violationsOf(page));
  await page.getByRole('radio', { name: /^Interval/ }).check();
  await page.getByRole('button', { name: 'Add: problem statement' }).click();
  await page.keyboard.type('High fluid intake related to salty soups twice daily.');
  await page.waitForTimeout(600);
  await shot('interval-1280');
  await page.getByRole('radio', { name: /^Three/ }).check();
  await page.waitForTimeout(600);
  await shot('lines-1280');
  await page.emulateMedia({ colorScheme: 'dark' });
  await shot('lines-dark');
  await page.emulateMedia({ colorScheme: null });
  await page.getByRole('radio', { name: /^Interval/ }).check();
  await page.setViewportSize({ width: 390, height: 844 });
  await page.waitForTimeout(400);
  await shot('interval-390');
  console.log('overflow', await page.evaluate('document.documentElement.scrollWidth'));
  console.log(await violationsOf(page));
  await page.setViewportSize({ width: 1280, height: 900 });
  await page.emulateMedia({ media: 'print' });
  await page.setViewportSize({ width: 720, height: 1000 });
  await page.waitForTimeout(300);
  await shot('interval-print', false);
  await page.emulateMedia({ media: null });
  await page.setViewportSize({ width: 1280, height: 900 });
  await page.getByRole('button', { name: 'Keep the note' }).click();
  await page.getByRole('button', { name: 'Correct it in a new note' }).waitFor();
  await shot('kept-1280');
  await page.emulateMedia({ media: 'print' });
  await page.waitForTimeout(300);
  await page.pdf({ path: '/tmp/n-kept.pdf', format: 'Letter' });
  await shot('kept-print', false);
  await page.emulateMedia({ media: null });
  console.log(await violationsOf(page), complaints);
} finally {
  await b.close();
  await w.stop();
}
