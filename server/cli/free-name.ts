/** A file's name that no other of the same call has: the second `tide` is `tide-2`. */
export function freeName(wanted: string, used: Set<string>): string {
  let name = wanted;
  for (let number = 2; used.has(name); number++) name = `${wanted}-${number}`;
  used.add(name);
  return name;
}
