/**
 * The uri of the file that `use "…"` names, seen from the file that says it. Pure work on strings: `..` and `.` are walked, a name
 * without an ending gets `.play`, a name with a scheme or a leading slash stands for itself. Blanks and the like are percent-encoded.
 */
export function resolveUse(fromUri: string, name: string): string {
  const written = name.trim().replaceAll('\\', '/');
  const file = /\.[a-z0-9]+$/i.test(written) ? written : `${written}.play`;
  if (/^[a-z][a-z0-9+.-]+:/i.test(file)) return file;
  const [, root = '', path = ''] = /^([a-z][a-z0-9+.-]*:(?:\/\/[^/]*)?)?(.*)$/i.exec(fromUri) ?? [];
  const folders = file.startsWith('/') ? [] : path.split('/').slice(0, -1);
  const parts: string[] = [];
  for (const part of [...folders, ...file.split('/').map(encodePart)]) {
    if (part === '.' || part === '') continue;
    if (part === '..') parts.pop();
    else parts.push(part);
  }
  const slash = path.startsWith('/') || file.startsWith('/') ? '/' : '';
  return `${root}${slash}${parts.join('/')}`;
}

function encodePart(part: string): string {
  try {
    return encodeURIComponent(part);
  } catch {
    // Half a surrogate pair cannot be encoded; it stays as it is and names no file.
    return part;
  }
}

/** A part of a uri as it is read; one that is not encoded rightly stays as it is. */
export function readablePart(part: string): string {
  try {
    return decodeURIComponent(part);
  } catch {
    return part;
  }
}
