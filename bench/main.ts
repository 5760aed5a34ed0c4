import { benchStatements } from './statements.ts';
import { benchSurvey } from './survey.ts';

process.stdout.write(`Node ${process.version}; best of several runs; one thread of work (the garbage collector has its own)\n\n`);
benchStatements();
process.stdout.write('\n');
benchSurvey();
