/**
 * What another account of the computer gets: `node otherAccount.fixture.ts UID ADDRESS '[["get","/api/foods"],…]' FILE …` prints, as JSON, the
 * answer to each request and how reading each file ends. Root begins it, for the project may lie where the other account may not enter.
 */
import { readdirSync, readFileSync, statSync } from 'node:fs';

const [account, address, requests, ...paths] = process.argv.slice(2);
process.setgroups!([]);
process.setgid!(Number(account));
process.setuid!(Number(account));

const answers = [];
for (const [method, path] of JSON.parse(requests!) as [string, string][]) {
  const body = method === 'get' || method === 'delete' ? {} : { body: '{}', headers: { 'content-type': 'application/json' } };
  const answer = await fetch(`${address}${path}`, { method: method.toUpperCase(), redirect: 'manual', ...body });
  answers.push({ method, path, status: answer.status, cookie: answer.headers.get('set-cookie'), text: await answer.text() });
}

const reads = paths.map(path => {
  try {
    return { path, got: statSync(path).isDirectory() ? readdirSync(path).join() : readFileSync(path).toString('latin1') };
  } catch (error) {
    return { path, refused: (error as NodeJS.ErrnoException).code };
  }
});

process.stdout.write(JSON.stringify({ uid: process.getuid?.(), answers, reads }));
