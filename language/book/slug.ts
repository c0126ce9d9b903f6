/**
 * A name as keys carry it: lower case, blanks as hyphens, accents and emoji kept. The signs that part ids are built with
 * (`/ ? # : .`) become hyphens too, so that an id can always be taken apart again.
 */
export function slugOf(name: string): string {
  const slug = name
    .normalize('NFC')
    .toLowerCase()
    .replace(/[\s/?#:.]+/g, '-')
    .replace(/^-+|-+$/g, '');
  return slug === '' ? 'unnamed' : slug;
}

/** A name as files carry it: one no disk objects to, and that leads into no other folder. */
export function fileNameOf(name: string): string {
  const plain = [...slugOf(name).replace(/[\\<>|*"\u0000-\u001F]+/g, '-')].slice(0, 80).join('');
  return DEVICES.test(plain) ? `${plain}-` : plain;
}

/** What Windows takes for a device, whatever ending stands behind it: a drawing written to `nul.svg` is lost without a word. */
const DEVICES = /^(?:con|prn|aux|nul|com\d|lpt\d)$/;

/** Adds `#2`, `#3` … to keys that come again. */
export function numberedKeys(): (base: string) => { readonly key: string; readonly ordinal: number } {
  const counts = new Map<string, number>();
  return base => {
    const ordinal = (counts.get(base) ?? 0) + 1;
    counts.set(base, ordinal);
    return { key: ordinal === 1 ? base : `${base}#${ordinal}`, ordinal };
  };
}
