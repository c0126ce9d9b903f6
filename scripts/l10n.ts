// `npm run l10n`: writes the English bundle and tells what each language still lacks.
import { readdirSync, readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { root } from './build.ts';
import { allTemplates, englishBundle } from './templates.ts';

const folder = join(root, 'l10n');
writeFileSync(join(folder, 'bundle.l10n.json'), englishBundle());
const { found } = allTemplates();
console.log(`l10n/bundle.l10n.json: ${found.length} templates`);
for (const name of readdirSync(folder).filter((one) => one !== 'bundle.l10n.json')) {
  const translated = JSON.parse(readFileSync(join(folder, name), 'utf8')) as Record<string, string>;
  const missing = found.filter((template) => translated[template] === undefined);
  const vain = Object.keys(translated).filter((template) => !found.includes(template));
  console.log(`l10n/${name}: ${missing.length} missing, ${vain.length} in vain`);
  for (const template of missing) console.log(`  + ${template}`);
  for (const template of vain) console.log(`  - ${template}`);
}
