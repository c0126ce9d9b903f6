// The playbook as a list: every play with what a coach chooses by, and the books with their sections in order.
import { firstLineOf, type Block, type Book, type BookFile } from '../../language/book/book.ts';
import type { Compiled } from '../../language/compile.ts';
import type { Severity } from '../../language/checks/finding.ts';
import type { Keeper } from '../../language/keeper.ts';
import { createLookup } from '../../language/names/lookup.ts';
import { sectionsOf } from '../../language/names/sections.ts';
import type { LookTime, Needed, Timeline } from '../../language/timeline/timeline.ts';
import type { BeingWritten } from './being-written.ts';
import type { BookEntry, PlayEntry, Playbook } from './playbook-protocol.ts';
import { textOfLine } from './positions.ts';

/**
 * The plays of these files in their order; `turn` lets waiting messages go first. The book is asked for anew at each file: it may have
 * changed in between.
 */
export async function playbookOf(book: () => Book, keeper: Keeper, written: BeingWritten, uris: readonly string[], turn: () => Promise<void>): Promise<Playbook> {
  const plays: PlayEntry[] = [];
  for (const uri of uris) {
    // One play after the other: a keystroke does not wait for a playbook.
    for (const block of book().files.get(uri)?.blocks ?? []) {
      if (block.kind !== 'play') continue;
      keeper.compile(book(), uri, block);
      await turn();
    }
    const file = book().files.get(uri);
    if (file !== undefined) plays.push(...entriesOf(file, keeper.playsOf(book(), uri), written));
  }
  return { plays, books: uris.flatMap((uri) => booksOf(book(), uri, plays)) };
}

function entriesOf(file: BookFile, plays: readonly Compiled[], written: BeingWritten): PlayEntry[] {
  return plays.flatMap((compiled) => {
    const line = firstLineOf(file, compiled.key);
    if (line === undefined) return [];
    const ours = written.quieter(file.uri, compiled.block, line, compiled.findings);
    const count = (severity: Severity) => ours.filter((finding) => finding.severity === severity).length;
    return [entryOf(file.uri, line, compiled, { errors: count('error'), warnings: count('warning') })];
  });
}

function entryOf(uri: string, line: number, { key, block, play, timeline }: Compiled, counts: Pick<PlayEntry, 'errors' | 'warnings'>): PlayEntry {
  const { kind, zone, press } = play.defence.value;
  const { looks, firstLook, allLooks } = timeline.times;
  return {
    uri, key, line,
    lastLine: line + lastWritten(block),
    name: play.name,
    tags: [...play.tags],
    situation: [...play.situation],
    // A zone that presses is called so already.
    against: kind === 'none' ? null : (zone ?? (press === true ? 'man press' : kind)),
    from: play.start.alignment.value ?? null,
    throwIn: play.start.throwIn?.side ?? null,
    level: play.level.value,
    call: play.clock.call ?? null,
    first: wholeSeconds(firstLook),
    all: wholeSeconds(allLooks),
    looks: looks.flatMap((time) => {
      const said = play.steps.flatMap((step) => step.looks).find(({ id }) => id === time.look);
      return said === undefined ? [] : [{ label: said.label ?? said.who.join(' or '), needs: secondsFor(time, timeline, play.clock.leave) }];
    }),
    ...counts,
  };
}

/** As `Times.firstLook` is worked out, for one look; never more than all looks together need. On a throw-in the clock starts at the touch. */
function secondsFor({ late, flight, run }: LookTime, { runs, times }: Timeline, leave: number | undefined): number {
  const started = runs.find(({ id }) => id === run)?.clockStartsAt ?? 0;
  const seconds = Math.ceil((late - started + (leave === undefined ? 0 : flight + leave * 1000)) / 1000);
  return Math.max(0, Math.min(seconds, times.allLooks?.fromCall ?? seconds));
}

/** The figures come from any text: what is no count of seconds is none. */
function wholeSeconds(needed: Needed | undefined): Needed | null {
  if (needed === undefined || !Number.isFinite(needed.fromCall) || !Number.isFinite(needed.alreadySet)) return null;
  return { fromCall: Math.max(0, Math.ceil(needed.fromCall)), alreadySet: Math.max(0, Math.ceil(needed.alreadySet)) };
}

function lastWritten(block: Block): number {
  let line = block.lines.length - 1;
  while (line > 0 && textOfLine(block, line).trim() === '') line--;
  return line;
}

function booksOf(book: Book, uri: string, plays: readonly PlayEntry[]): BookEntry[] {
  const file = book.files.get(uri);
  const lookup = createLookup(book, uri);
  return (file?.blocks ?? []).flatMap((block) => {
    const line = file && block.kind === 'book' ? firstLineOf(file, block.key) : undefined;
    if (line === undefined) return [];
    const sections = sectionsOf(block).map(({ name, at, plays: named }) => ({
      name,
      line: line + at,
      plays: named.map((one) => {
        const found = lookup.play(one.name);
        const play = plays.findIndex(({ uri: where, key }) => where === found?.uri && key === found.block.key);
        return { name: one.name, play: play < 0 ? null : play };
      }),
    }));
    return [{ uri, name: block.name ?? '', line, sections }];
  });
}
