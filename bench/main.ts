import { benchBrowser } from './browser.ts';
import { benchMinerals } from './minerals.ts';
import { benchReferenceMatch } from './referenceMatch.ts';
import { benchStatements } from './statements.ts';
import { benchSurvey } from './survey.ts';
import { benchSurveyRequest } from './surveyRequest.ts';

process.stdout.write(`Node ${process.version}; best of several runs; one thread of work (the garbage collector has its own)\n\n`);
benchStatements();
process.stdout.write('\n');
benchReferenceMatch();
process.stdout.write('\n');
await benchMinerals();
process.stdout.write('\n');
benchSurvey();
process.stdout.write('\n');
await benchSurveyRequest();
process.stdout.write('\n');
await benchBrowser();
