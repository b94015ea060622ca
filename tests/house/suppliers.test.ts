import { readFileSync } from 'node:fs';
import { expect, test } from 'vitest';
import { billOfMaterials, licencesPage, suppliers } from '../../src/build/suppliers';

const all = suppliers();
const { dependencies } = JSON.parse(readFileSync('package.json', 'utf8')) as { readonly dependencies: Readonly<Record<string, string>> };

test('the bill of materials holds every dependency at the version of the lock file, with licence and digest', () => {
  const bill = JSON.parse(billOfMaterials(all, '1.2.3')) as {
    readonly components: readonly {
      name: string;
      version: string;
      licenses: [{ license?: { id: string }; expression?: string }];
      hashes: [{ content: string }];
    }[];
  };
  for (const [name, version] of Object.entries(dependencies)) {
    const component = bill.components.find((one) => one.name === name);
    expect(component?.version, name).toBe(version);
    expect(component!.hashes[0].content, name).toMatch(/^[0-9a-f]{128}$/);
  }
  const licences = new Set(bill.components.map(({ licenses: [one] }) => one.license?.id ?? one.expression!));
  const fit = ['MIT', 'ISC', '0BSD', 'OFL-1.1', 'BSD-3-Clause', 'Apache-2.0', 'CC0-1.0', 'Zlib'];
  const parts = [...licences].flatMap((licence) => licence.replaceAll(/[()]/g, '').split(' AND '));
  expect(parts.filter((id) => !fit.includes(id))).toEqual([]);
});

test('the licences page gives the whole text of every licence that a package carries, as text', () => {
  const page = licencesPage([...all, { name: 'x', version: '1', licence: 'MIT', integrity: '', text: '<b>Copyright</b>' }]);
  expect(page).toContain('&lt;b>Copyright'.replace('>', '&gt;'));
  expect(all.filter(({ text }) => text.length < 200).map(({ name }) => name)).toEqual(['lerc', 'seedrandom']); // lerc carries none and none of it is handed out; seedrandom's stands in its read-me
});

test('no package runs a script when it is installed, and every version is exact', () => {
  expect(readFileSync('.npmrc', 'utf8')).toContain('ignore-scripts=true');
  expect(Object.values(dependencies).filter((version) => !/^\d+\.\d+\.\d+$/.test(version))).toEqual([]);
});
