/** What two ways of writing one name share: upper and lower case, blanks at its ends and doubled ones do not count. */
export function nameKey(name: string): string {
  return name.normalize('NFC').trim().replace(/\s+/g, ' ').toLowerCase();
}
