import { createHash } from 'node:crypto';

const style = `
:root { color-scheme: light dark; --ground: #f7f5ef; --sheet: #fffefb; --line: #8b8677; --ink: #1d2126; --soft: #555b63; }
@media screen and (prefers-color-scheme: dark) { :root { --ground: #15181b; --sheet: #1c2024; --line: #88919b; --ink: #eceae4; --soft: #b2b8bf; } }
* { box-sizing: border-box; }
body { margin: 0; padding: 16px; background: var(--ground); color: var(--ink); overflow-wrap: anywhere;
  font: 400 1rem/1.5 "Atkinson Hyperlegible Next", "Atkinson Hyperlegible", system-ui, sans-serif; }
main { max-width: 36rem; margin: 10vh auto 0; padding: 24px; background: var(--sheet); border: 1px solid var(--line); border-radius: 6px; }
h1 { margin: 0 0 12px; font-size: 1.5rem; font-weight: 600; line-height: 1.25; }
p { margin: 0 0 12px; }
p:last-child { margin: 0; color: var(--soft); }
code { font-size: 0.9375rem; white-space: nowrap; }
@media (max-width: 30rem) { main { margin-top: 0; padding: 16px; } }
@media print { :root { color-scheme: light; } body { background: none; } main { margin: 0; } }
`;

const html = `<!doctype html>
<html lang="en">
<head>
<meta charset="utf-8">
<meta name="viewport" content="width=device-width, initial-scale=1">
<title>Platewright: open the printed address</title>
<style>${style}</style>
</head>
<body>
<main>
<h1>Open the address that Platewright printed when it was started</h1>
<p>It stands in the window where the program was started, after <q>Platewright runs at</q>. Copy the whole line, with what
follows <code>?entry=</code>, into this browser.</p>
<p>Was Platewright started again since? Then the address is a new one. What was saved is kept.</p>
<p>Without that address nobody gets in, so that other accounts of this computer see nothing of your work.</p>
</main>
</body>
</html>
`;

const policy = `default-src 'none'; style-src 'sha256-${createHash('sha256').update(style).digest('base64')}'; base-uri 'none'; form-action 'none'; frame-ancestors 'none'`;

/** What a browser is shown that has not opened the printed address: what to do, and nothing of the workbench. */
export function entryPage(): Response {
  return new Response(html, {
    status: 403,
    headers: { 'content-type': 'text/html; charset=utf-8', 'cache-control': 'no-store', 'content-security-policy': policy },
  });
}
