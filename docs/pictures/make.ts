/** Makes the README's pictures from the running program: a workspace of its own with the demo, nothing else. */
import { fileURLToPath } from 'node:url';
import { launchBrowser, quiet, removeFolder, startWorkbench } from '../../test/e2e/workbench.ts';

const workbench = await startWorkbench();
const browser = await launchBrowser();
try {
  const [beef] = (await (await workbench.fetch('/api/foods?search=beef%20reduced')).json()) as { id: string }[];
  const page = await (await browser.newContext({ viewport: { width: 1440, height: 900 }, colorScheme: 'light' })).newPage();
  await workbench.letIn(page.context());
  const pictures = {
    survey: `/?food=${beef!.id}`,
    food: `/foods/${beef!.id}?plate=slices-on-low-sodium-bread`,
    data: '/data',
    guide: '/guides/sandwich-slices',
    client: '/clients/00000000-0000-4000-8000-00000000d010',
  };
  for (const [name, path] of Object.entries(pictures)) {
    await page.goto(`${workbench.address}${path}`);
    await quiet(page);
    await page.screenshot({ path: fileURLToPath(new URL(`${name}.png`, import.meta.url)) });
  }
} finally {
  await browser.close();
  await workbench.stop();
  removeFolder(workbench.folder);
}
