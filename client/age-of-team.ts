/** `Heron Bay U14` says how old they are: that age is offered first, the others behind it in their order. */
export function ofTheTeamFirst(levels: readonly string[], team: string): string[] {
  const age = /(?<![\p{L}\p{N}])u[ -]?(\d{2})(?!\p{N})/iu.exec(team)?.[1];
  return levels.toSorted((a, b) => Number(b === `u${age}`) - Number(a === `u${age}`));
}
