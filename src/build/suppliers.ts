import { existsSync, readdirSync, readFileSync } from 'node:fs';

/** A package that is handed out with the program, its licence text included. */
export type Supplier = {
  readonly name: string;
  readonly version: string;
  readonly licence: string;
  /** Digest of what the registry sent, `sha512-` and base 64. */
  readonly integrity: string;
  readonly text: string;
};

type Locked = { readonly version: string; readonly license?: string; readonly integrity?: string; readonly dev?: boolean };

/** Everything that the lock file says a run needs, and nothing that only a build needs. @throws Error for a package without a licence */
export function suppliers(): readonly Supplier[] {
  const { packages } = JSON.parse(readFileSync('package-lock.json', 'utf8')) as { readonly packages: Readonly<Record<string, Locked>> };
  return Object.entries(packages)
    .filter(([folder, { dev }]) => folder !== '' && !dev)
    .map(([folder, { version, license, integrity }]) => {
      const name = folder.slice(folder.lastIndexOf('node_modules/') + 'node_modules/'.length);
      if (!license) throw new Error(`${name} names no licence: it can't be handed out`);
      return { name, version, licence: license, integrity: integrity ?? '', text: licenceText(folder) };
    });
}

function licenceText(folder: string): string {
  if (!existsSync(folder)) return '';
  const file = readdirSync(folder).find((name) => /^(licen[cs]e|copying)(\.(md|txt))?$/i.test(name));
  return file ? readFileSync(`${folder}/${file}`, 'utf8').trim() : '';
}

/** The bill of materials in the form of CycloneDX 1.6: without a date, so that the same lock file gives the same text. */
export function billOfMaterials(all: readonly Supplier[], version: string): string {
  const components = all.map(({ name, version: of, licence, integrity }) => ({
    type: 'library',
    'bom-ref': `${name}@${of}`,
    name,
    version: of,
    purl: `pkg:npm/${name.replace('@', '%40')}@${of}`,
    licenses: [licence.includes(' ') ? { expression: licence } : { license: { id: licence } }],
    ...(integrity.startsWith('sha512-') && {
      hashes: [{ alg: 'SHA-512', content: Buffer.from(integrity.slice('sha512-'.length), 'base64').toString('hex') }],
    }),
  }));
  const about = { component: { type: 'application', name: 'faintward', version, licenses: [{ license: { id: 'MIT' } }] } };
  return `${JSON.stringify({ bomFormat: 'CycloneDX', specVersion: '1.6', version: 1, metadata: about, components }, null, 2)}\n`;
}

const escaped = (text: string): string => text.replaceAll('&', '&amp;').replaceAll('<', '&lt;').replaceAll('>', '&gt;');

/** The page of third-party licences. */
export const licencesPage = (all: readonly Supplier[]): string => `<!doctype html>
<html lang="en">
<head>
<meta http-equiv="Content-Security-Policy" content="default-src 'none'; style-src 'self'; font-src 'self'; img-src 'self'">
<meta charset="utf-8">
<meta name="viewport" content="width=device-width, initial-scale=1">
<title>Faintward: third-party licences</title>
<link rel="stylesheet" href="./licences.css">
</head>
<body>
<main>
<p><a href="./index.html">Back to Faintward</a></p>
<h1>Third-party licences</h1>
<p>Faintward is handed out with these ${all.length} packages. It is itself under the MIT licence. The same list for machines: <a href="./bill-of-materials.json">bill of materials</a>.</p>
${all.map(({ name, version, licence, text }) => `<section>\n<h2>${escaped(name)} <span>${escaped(version)}, ${escaped(licence)}</span></h2>\n${text === '' ? '<p>Its package carries no licence text beside the name.</p>' : `<pre tabindex="0" aria-label="Licence of ${escaped(name)}">${escaped(text)}</pre>`}\n</section>`).join('\n')}
</main>
</body>
</html>
`;

/** Paper and ink of the program, by day and by night; its own type where the build has it. */
export const licencesStyle = (font: string | undefined): string => `${
  font ? `@font-face{font-family:"Faintward";src:url("./${font}") format("woff2");font-weight:200 800}\n` : ''
}:root{color-scheme:light dark;--paper:light-dark(#f4efe3,#15191a);--paper-2:light-dark(#ebe4d3,#1e2425);--ink:light-dark(#1f2a2c,#e9e2d1);--ink-2:light-dark(#56605e,#a4aca6);--truth:light-dark(#0f5e78,#79c3dc)}
body{margin:0;background:var(--paper);color:var(--ink);font:17px/1.5 Faintward,system-ui,sans-serif}
main{max-width:46em;margin:0 auto;padding:34px 24px 64px}
h1{font-size:34px;line-height:1.15}
h2{font-size:20px;margin:34px 0 8px}
h2 span{color:var(--ink-2);font-weight:400;font-size:17px}
pre{background:var(--paper-2);padding:14px 16px;max-height:14em;overflow:auto;white-space:pre-wrap;font-size:14px;line-height:1.45;border-radius:6px}
a{color:var(--truth);display:inline-block;padding:11px 0}
p>a{min-height:22px}
:focus-visible{outline:2px solid var(--ink);outline-offset:2px}
`;
