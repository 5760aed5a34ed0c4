/** Wiring: joins the commands to the world, and turns whatever goes wrong into words and an exit code. */
import { constants } from 'node:os';
import { fileURLToPath } from 'node:url';
import { inputLines } from '#adapters/files/inputLines.ts';
import { readBytes } from '#adapters/files/readBytes.ts';
import { readTable } from '#adapters/files/readTable.ts';
import { type Asker, askerOf } from '#adapters/terminal/askLine.ts';
import { writeText } from '#adapters/terminal/writeText.ts';
import { localDay } from '#app/clients/localDay.ts';
import { Fault } from '#core/errors.ts';
import { faultCatalogue } from '#core/faultCatalogue.ts';
import type { CommandTable, World } from './command.ts';
import { helpAbout } from './commands/help.ts';
import { readOptions } from './readOptions.ts';

const table: CommandTable = {
  start: () => import('./commands/start.ts'),
  survey: () => import('./commands/survey.ts'),
  statement: () => import('./commands/statement.ts'),
  label: () => import('./commands/label.ts'),
  prescribe: () => import('./commands/prescribe.ts'),
  minerals: () => import('./commands/minerals.ts'),
  guide: () => import('./commands/guide.ts'),
  reference: () => import('./commands/reference.ts'),
  handout: () => import('./commands/handout.ts'),
  yardsticks: () => import('./commands/yardsticks.ts'),
  clients: () => import('./commands/clients.ts'),
  formula: () => import('./commands/formula.ts'),
};
const help = helpAbout(table);

let asker: Asker | undefined;
const world: World = {
  write: text => writeText(process.stdout, text),
  say: text => void process.stderr.write(text),
  width: Math.min(Math.max(process.stdout.columns ?? (Number(process.env.COLUMNS) || 80), 40), 120),
  inputLines() {
    if (process.stdin.isTTY) process.stderr.write('Reading from the keyboard, one line after the other; Ctrl-D ends.\n');
    return inputLines(process.stdin);
  },
  readBytes,
  readTable,
  openSolver: async () => (await import('#adapters/solver/highsSolver.ts')).openHighsSolver(),
  today: () => localDay(new Date()),
  writeSite: async (folder, files) => {
    endInOrder();
    await (await import('#adapters/files/writeSite.ts')).writeSite(folder, files);
  },
  pdfPrinter: async () => {
    endInOrder();
    const { pdfPrinter, sweepProfiles } = await import('#adapters/files/printPdf.ts');
    await sweepProfiles();
    return pdfPrinter();
  },
  readDatasets: async (path, watch) => {
    const [{ folderFiles }, { readDatasets }] = await Promise.all([
      import('#adapters/datasets/folderFiles.ts'),
      import('#adapters/datasets/readDatasets.ts'),
    ]);
    return readDatasets(await folderFiles(path), path, watch);
  },
  writeFile: async (path, text) => {
    endInOrder();
    await (await import('#adapters/files/writeWhole.ts')).writeWhole(path, text);
  },
  openClientVault: async () => (await import('#adapters/clients/sqliteVault.ts')).openClientVault(await clientFolder()),
  moveClientsAside: async () => (await import('#adapters/clients/setAside.ts')).moveAside(await clientFolder(), new Date()),
  ask: question => theAsker().ask(question),
  askHidden: question => theAsker().askHidden(question),
  shipped: path => fileURLToPath(new URL(`../../${path}`, import.meta.url)),
};

for (const stream of [process.stdout, process.stderr]) {
  stream.on('error', (error: NodeJS.ErrnoException) => {
    // A reader that has seen enough (`| head -1`) closes the pipe: that ends the work and is no fault.
    if (error.code !== 'EPIPE') explain(new Fault('output-not-written', `Writing failed: ${error.message}.`));
    process.exit();
  });
}

try {
  await run(process.argv.slice(2));
} catch (error) {
  explain(
    error instanceof Fault ? error : new Fault('program-fault', error instanceof Error ? (error.stack ?? error.message) : String(error)),
  );
} finally {
  asker?.close();
}

function theAsker(): Asker {
  asker ??= askerOf(process.stdin, world.say);
  return asker;
}

async function clientFolder(): Promise<string> {
  return (await import('#adapters/storage/openStore.ts')).dataFolder(process.env);
}

/** From when something unfinished may stand on the disk, a signal ends the program in such a way that it is removed. */
function endInOrder(): void {
  for (const signal of ['SIGINT', 'SIGTERM', 'SIGHUP'] as const) {
    if (process.listenerCount(signal) === 0) process.once(signal, () => process.exit(128 + constants.signals[signal]));
  }
}

function explain(fault: Fault): void {
  process.exitCode = faultCatalogue[fault.code].blame === 'person' ? 1 : 2;
  process.stderr.write(`${fault.title}\n${fault.message}\nNext: ${fault.nextStep}\n`);
}

async function run([name = 'help', ...args]: readonly string[]): Promise<void> {
  if (name === 'help' || name === '--help' || name === '-h') return help.run(readOptions(help, args), world);
  if (!Object.hasOwn(table, name)) throw new Fault('unknown-command', `There is no command "${name}".`);
  if (args.includes('--help') || args.includes('-h')) return help.run({ options: {}, positionals: [name] }, world);
  const { command } = await table[name]!();
  return command.run(readOptions(command, args), world);
}
