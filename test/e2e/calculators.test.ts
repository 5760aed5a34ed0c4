import type { Browser, Page } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { browserPath, complaintsOf, launchBrowser, removeFolder, startWorkbench, violationsOf, type Workbench } from './workbench.ts';

// The real program in a real Chromium: find a formula, work it out by keyboard, be told what cannot be, send a result into an assessment.
describe.skipIf(browserPath === undefined)('calculators in a browser (skipped where no Chromium-family browser is installed)', () => {
  let workbench: Workbench;
  let browser: Browser;
  let page: Page;
  let complaints: readonly string[] = [];

  beforeAll(async () => {
    workbench = await startWorkbench();
    browser = await launchBrowser();
    page = await (await browser.newContext({ viewport: { width: 1280, height: 900 } })).newPage();
    await workbench.letIn(page.context());
    complaints = complaintsOf(page);
  }, 120_000);
  afterAll(async () => {
    await browser?.close();
    await workbench?.stop();
    if (workbench !== undefined) removeFolder(workbench.folder);
  });
  const open = (path: string) => page.goto(`${workbench.address}${path}`);
  const result = () => page.getByRole('region', { name: 'Result' });

  test('[CALC-8] a formula is found in the list and worked out with the keyboard alone', async () => {
    await open('/');
    await page.getByRole('navigation', { name: 'Workbench' }).getByRole('link', { name: 'Calculators' }).click();
    for (const subject of ['Kidney function', 'Weight', 'Protein and nutrition', 'Minerals', 'Dialysis', 'Fluid'])
      await page.getByRole('heading', { level: 2, name: subject, exact: true }).waitFor();
    await page.getByRole('searchbox', { name: 'Find a formula' }).focus();
    await page.keyboard.type('mass index');
    await page.getByText(/^2 of \d+ formulas$/).waitFor();
    await page.getByRole('link', { name: 'Body mass index' }).focus();
    await page.keyboard.press('Enter');
    await page.getByRole('heading', { level: 1, name: 'Body mass index' }).waitFor();
    await page.getByRole('textbox', { name: 'Weight' }).focus();
    await page.keyboard.type('82');
    await page.keyboard.press('Tab');
    expect(await page.evaluate("document.activeElement?.getAttribute('aria-label')")).toBe('Unit of Weight');
    await page.keyboard.press('Tab');
    await page.keyboard.type('175');
    await result().getByText('26.8 kg/m²').waitFor();
    // By definition: 180 lb (81.65 kg) at 5 ft 9 in (175.26 cm).
    await page.getByRole('textbox', { name: 'Weight' }).fill('180');
    await page.getByRole('combobox', { name: 'Unit of Weight' }).selectOption('lb');
    await page.getByRole('textbox', { name: 'Height' }).fill('5 9');
    await page.getByRole('combobox', { name: 'Unit of Height' }).selectOption('ft in');
    await result().getByText('26.6 kg/m²').waitFor();
  });

  test('[CALC-8] what cannot be is told at its field, and what is missing only that it is', async () => {
    await open('/calculators/egfr-ckd-epi-2021');
    await page.getByRole('textbox', { name: 'Age' }).fill('60');
    await result().getByText('Still needed: Sex that the formula goes by; Creatinine in serum (IDMS-traceable).').waitFor();
    expect(await page.locator('[aria-invalid]').count()).toBe(0);
    await page.getByRole('button', { name: 'Work it out' }).press('Enter');
    expect(await page.evaluate('document.activeElement?.tagName')).toBe('SELECT');
    await page.getByRole('combobox', { name: 'Sex that the formula goes by' }).selectOption('female');
    await page.getByRole('textbox', { name: /^Creatinine/ }).fill('132.6');
    await page.getByText('132.6 mg/dL is out of range: expected 0.1 to 30 mg/dL; was it umol/L?').waitFor();
    await result().getByText('No result: mend what is named at its field.').waitFor();
    await page.getByRole('combobox', { name: /^Unit of Creatinine/ }).selectOption('umol/L');
    // Inker 2021: a woman of 60 with 132.6 umol/L has 39.65, shown as 40.
    await result().getByText('40 mL/min/1.73 m²').waitFor();
    await result().getByText('G3b: 30 to 44').waitFor();
    await open('/calculators/no-such-formula');
    await page.getByRole('alert').getByText('There is no formula of this name.').waitFor();
  });

  test('[CALC-8] the list, a result and a fault keep WCAG 2.2 A and AA, light and dark, and fit a width of 320', async () => {
    for (const theme of ['light', 'dark']) {
      await open('/calculators');
      await page.getByRole('heading', { level: 2, name: 'Fluid', exact: true }).waitFor();
      if (theme === 'dark') await page.getByRole('button', { name: 'Light / dark' }).click();
      expect([theme, await violationsOf(page)]).toEqual([theme, []]);
      await open('/calculators/protein-energy-wasting');
      await page.getByRole('button', { name: 'Use the example' }).click();
      await result().getByText('protein-energy wasting').waitFor();
      await page.getByRole('textbox', { name: 'Body fat' }).fill('900');
      await page.getByText('900 % is out of range').waitFor();
      expect([theme, await violationsOf(page)]).toEqual([theme, []]);
    }
    await page.setViewportSize({ width: 320, height: 640 });
    expect(await page.evaluate('document.documentElement.scrollWidth <= innerWidth')).toBe(true);
    await page.setViewportSize({ width: 1280, height: 900 });
    await page.getByRole('button', { name: 'Light / dark' }).click();
  });

  test('[CALC-9] a result goes into an assessment, unsaved, and leaves no trace in address or history', async () => {
    await open('/calculators/weight-loss-percent');
    await page.getByRole('textbox', { name: 'Usual weight' }).fill('72');
    await page.getByRole('textbox', { name: 'Weight now' }).fill('80');
    await result().getByText('−11.1%').waitFor();
    // A gain is no loss.
    expect(await page.getByText('Use in an assessment of').count()).toBe(0);
    await page.getByRole('button', { name: 'Use the example' }).click();
    await page.getByText('Use in an assessment of').click();
    await page.getByRole('combobox', { name: 'As' }).selectOption('weightLoss.percent6Months');
    await page.getByRole('combobox', { name: 'Client' }).selectOption({ label: 'L. O. (demo)' });
    await page.getByRole('button', { name: 'Open the assessment with it' }).click();
    await page.getByText('From Calculators, Weight loss: weight loss in 6 months 10.0%.').waitFor();
    expect(await page.getByRole('spinbutton', { name: 'Weight loss in 6 months, %' }).inputValue()).toBe('10');
    expect(
      await page.evaluate('[location.href, JSON.stringify([history.state, { ...localStorage }, { ...sessionStorage }])].join()'),
    ).not.toMatch(/weightLoss|10\.0|percent6/);
    await page.getByRole('button', { name: 'Cancel' }).click();
    await page.getByRole('button', { name: 'New assessment' }).click();
    expect(await page.getByRole('spinbutton', { name: 'Weight loss in 6 months, %' }).inputValue()).toBe('');
  });

  test('[CALC-9] a dose becomes a laboratory result that still wants its day, and is kept only by the person', async () => {
    await open('/calculators/kt-v-single-pool');
    await page.getByRole('button', { name: 'Use the example' }).click();
    await result().getByText('1.49').waitFor();
    await page.getByText('Use in an assessment of').click();
    await page.getByRole('combobox', { name: 'Client' }).selectOption({ label: 'L. O. (demo)' });
    await page.getByRole('button', { name: 'Open the assessment with it' }).click();
    await page.getByText('Give the day on which the blood was drawn.').waitFor();
    expect(await page.getByRole('combobox', { name: 'Result' }).last().inputValue()).toBe('spKtV');
    expect(await page.getByRole('spinbutton', { name: 'Value' }).last().inputValue()).toBe('1.49');
    await page.reload();
    await page.getByRole('button', { name: 'New assessment' }).waitFor();
    expect(await page.getByText('From Calculators').count()).toBe(0);
  });

  test('[CALC-9] while client data is locked nobody is named', async () => {
    await open('/clients');
    await page.getByText('Not locked: anyone using this computer account').click();
    await page.getByLabel('New passphrase, 15 characters or more', { exact: true }).fill('an invented phrase');
    await page.getByLabel('New passphrase again', { exact: true }).fill('an invented phrase');
    await page.getByRole('button', { name: 'Set the passphrase' }).click();
    await page.getByText('Locked by a passphrase when you leave').waitFor();
    await page.getByRole('button', { name: 'Lock now' }).click();
    await page.getByRole('heading', { name: 'Client data is locked' }).waitFor();
    await open('/calculators/urea-reduction-ratio');
    await page.getByRole('button', { name: 'Use the example' }).click();
    await page.getByText('Use in an assessment of').click();
    await page.getByText('Client data is locked. Open it under').waitFor();
    // The browser itself says of the locked answer that it was refused.
    expect(complaints.filter(one => !one.includes('423'))).toEqual([]);
  });
});
