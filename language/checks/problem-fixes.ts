// Mends for what reading and scheduling note as wrong.
import { message, type Message, type Param, type Params } from '../message/message.ts';
import { applyEdits } from '../grammar/mending/broken-line.ts';
import { parseLine, verbMissing } from '../grammar/parse-line.ts';
import { alignment, alignmentNames } from '../court/alignments.ts';
import type { Problem } from '../names/problem.ts';
import type { Fix } from './finding.ts';
import { lineBefore, lineRemoved, otherWords } from './fixes.ts';
import { nearestWord, others, theNearest } from './nearest-word.ts';
import type { PartId } from '../play/play.ts';
import { wordsOf, type Subject } from './subject.ts';

export function fixesFor(subject: Subject, problem: Problem): readonly Fix[] {
  const near = nearestName(subject, problem);
  const bare = near === undefined ? withoutQuotes(subject, problem) : [];
  if (bare.length > 0) return bare;
  if (near !== undefined) return renamed(subject, problem, near);
  switch (problem.code) {
    case 'screen-unused':
      return lineRemoved(subject, problem.part, message('Take the screen out'));
    case 'header-twice':
      return lineRemoved(subject, problem.part, message('Take the second line out'));
    case 'screen-refused':
      return offTheScreen(subject, problem);
    case 'off-nobody':
      return reworded(subject, problem.part, new RegExp(`\\s+off ${problem.params.screener}(?!\\s*(?:,|and|then)\\s*\\d)`, 'i'), '', message('Leave out “off {screener}”', { screener: problem.params.screener! }));
    case 'pin-unknown':
      // `look 5 on the roll: layup` → `look 5: layup`
      return problem.params.pin === 'place' ? [] : reworded(subject, problem.part, /\s+(?:on|off)\s+(?:the\s+|his\s+)?[\w-]+(?=\s*(?:"|:|$))/i, '', message('Leave it out of the look'));
    case 'offence-defends':
      return reworded(subject, problem.part, new RegExp(`^${problem.params.who}(?=\\s)`), `X${problem.params.who}`, message('Write “X{who}”', { who: problem.params.who! }));
    case 'verb-missing':
      return withAVerb(subject, problem);
    case 'line-elsewhere':
      return asFromLine(subject, problem);
    case 'pass-waits':
      return helpsToDribble(subject, problem) ? lineBefore(subject, problem.part, `${problem.params.who} keeps his dribble`, message('Let {who} keep his dribble', { who: problem.params.who! })).map(({ title, edits }) => ({ title, edits })) : [];
    case 'defender-attacks':
      return reworded(subject, problem.part, new RegExp(`^${problem.params.who}(?=\\s)`, 'i'), String(problem.params.who).slice(1), message('Write “{words}”', { words: String(problem.params.who).slice(1) }));
    default:
      return [];
  }
}

/** `4 dunker spot` → `4 cuts to dunker spot`, or he stays there. */
function withAVerb(subject: Subject, { part }: Problem): readonly Fix[] {
  const words = wordsOf(subject, part);
  const { tree } = parseLine(words);
  return tree?.$type === 'Placing' ? verbMissing(tree).fixes.flatMap(({ title, edits }) => otherWords(subject, part, applyEdits(words, edits), title)) : [];
}

/** `1 top`, `2 right wing` … as lines of a play: one `from` line in place of the first, where it has none; told of that one. */
function asFromLine(subject: Subject, { part, params }: Problem): readonly Fix[] {
  const placings = subject.problems.flatMap((other) => (other.code === 'line-elsewhere' && other.params.belongs === 'alignment' ? [Number(other.part.slice('line:'.length))] : [])).toSorted((a, b) => a - b);
  const [first, ...others] = placings;
  if (params.belongs !== 'alignment' || part !== `line:${first}` || subject.lines.some((text) => parseLine(text).tree?.$type === 'From')) return [];
  const words = fromWords(subject, placings);
  const title = message('Write “{words}”', { words });
  return otherWords(subject, part, words, title).map(({ edits, ...fix }) => ({ ...fix, edits: [...edits, ...others.flatMap((at) => lineRemoved(subject, `line:${at}`, title).flatMap((removed) => removed.edits))] }));
}

/** With his dribble alive the closely-guarded count is what he may wait. */
function helpsToDribble({ rules }: Subject, { params }: Problem): boolean {
  const longest = rules.counts.closelyGuarded?.seconds.value ?? 5;
  return Number(params.limit) < longest && Number(params.seconds) <= longest;
}

function fromWords(subject: Subject, lines: readonly number[]): string {
  return `from ${lines.map((at) => wordsOf(subject, `line:${at}`)).join(', ')}`;
}

/** `3 cuts to right elbow` → `3 cuts off 5 to right elbow`. */
function offTheScreen(subject: Subject, { params, related = [] }: Problem): readonly Fix[] {
  const move = related[0];
  return move === undefined ? [] : reworded(subject, move, /(?=\s+to\s)/, ` off ${params.screener}`, message('Let {who} come off it: off {screener}', { who: params.who!, screener: params.screener! }));
}

/** The part's words with one thing in them changed; none where it does not stand there. */
function reworded(subject: Subject, part: PartId, what: RegExp, instead: string, title: Message): readonly Fix[] {
  const words = wordsOf(subject, part);
  const changed = words.replace(what, instead);
  return changed === words ? [] : otherWords(subject, part, changed, title);
}

const homes: Readonly<Record<string, Message>> = {
  file: message('above the first play'), roster: message('in a roster'), alignment: message('in an alignment'), book: message('in a book'),
};

const clocks: Readonly<Record<string, Message>> = { period: message('on the period clock'), shot: message('on the shot clock') };
const kinds: Readonly<Record<string, Message>> = { step: message('steps'), spot: message('spots'), player: message('players') };

/** The problem's parameters as its message says them: with the nearest known name, and a line's home in words. */
export function sayParams(subject: Subject, problem: Problem): Params {
  const near = nearestName(subject, problem);
  const params: Record<string, Param> = { near: near === undefined ? (toWrite(subject, problem) ?? '') : theNearest(near), ...problem.params };
  if (params.kind !== undefined) params.kinds = kinds[`${problem.params.kind}`] ?? params.kind;
  if (params.clock !== undefined) params.clock = clocks[`${problem.params.clock}`] ?? params.clock;
  if (problem.code === 'pin-unknown') params.does = awaited(`${problem.params.pin}`, `${problem.params.does}`);
  if (problem.code === 'pass-waits') params.mend = helpsToDribble(subject, problem) ? message('Let {to} start sooner, let {who} keep his dribble until then, or pass to him where he stands.', problem.params as Params) : message('Let {to} start sooner, or pass to him where he stands.', problem.params as Params);
  if (problem.code === 'wait-unknown') params.does = asWritten(subject, problem) ?? params.does!;
  if (params.belongs === 'alignment') params.belongs = message('in the line that says how they stand: “{words}”; or it lacks a verb', { words: fromWords(subject, [Number(problem.part.slice('line:'.length))]) });
  else if (params.belongs !== undefined) params.belongs = homes[`${problem.params.belongs}`] ?? params.belongs;
  return params;
}

/** `as 1 crosses half court`: what is waited for, in the coach’s words. */
function asWritten(subject: Subject, { part, params }: Problem): string | undefined {
  const said = new RegExp(`(?:^|\\s)${params.who}(?:\\s*(?:,|and)\\s*x?\\d)*\\s+(.+)$`, 'i').exec(wordsOf(subject, part));
  return said?.[1];
}

/** `his roll`, `him coming off 4`, `him at left corner` */
function awaited(pin: string, does: string): Param {
  if (pin === 'on') return message('his {does}', { does });
  if (pin === 'off') return message('him coming off {does}', { does });
  return pin === 'place' ? message('him at {place}', { place: does === '' ? message('that place') : does }) : `“${does}”`;
}

/** What a name of one's own needs, where none is near. */
function toWrite({ play }: Subject, { code, params }: Problem): Message | undefined {
  const name = `${params.name}`;
  if (code === 'unknown-spot')
    return message('. Say where it is: spot "{name}" is 3 ft inside right elbow, or is (4.2, 3) m: to the right of the ring, and towards half court. The court’s own spots (rim, nail, wing, corner …) stand without quotes; all are drawn in the reference under Spots', { name });
  if (code === 'unknown-alignment') return message('. Write one: alignment "{name}", with a line such as “1 top” for each player. Without quotes stand {known}', { name, known: alignmentNames.join(', ') });
  if (code === 'unknown-step') return others(play.steps.map((step) => step.name).filter((other) => other !== '' && other !== params.step));
  if (code === 'unknown-play') return others(namesIn(params.known));
  return undefined;
}

function namesIn(known: Param | undefined): readonly string[] {
  return Array.isArray(known) ? known.filter((name) => typeof name === 'string') : [];
}

/** The known name that an unknown one most likely meant. */
function nearestName({ play }: Subject, { code, params }: Problem): string | undefined {
  const name = String(params.name ?? '');
  if (code === 'unknown-spot') return nearestWord(name, Object.keys(play.spots));
  if (code === 'unknown-alignment' || code === 'unknown-play') return nearestWord(name, namesIn(params.known));
  if (code === 'unknown-step') return nearestWord(name, play.steps.map((step) => step.name).filter((other) => other !== params.step));
  return undefined;
}

/** `"left wing"`, `"horns"`: the court's own names stand without quotes. */
function withoutQuotes(subject: Subject, { part, params, code }: Problem): readonly Fix[] {
  const name = String(params.name);
  const stands = code === 'unknown-spot' ? parseLine(`3 cuts to ${name}`).fault === undefined : code === 'unknown-alignment' && alignment(name) !== undefined;
  const place = subject.places.get(part);
  const at = place === undefined || !stands ? -1 : (subject.lines[place.line] ?? '').indexOf(`"${name}"`);
  return place === undefined || at < 0 ? [] : [{ title: message('Write {name} without quotes', { name }), preferred: true, edits: [{ line: place.line, at, to: at + name.length + 2, text: name }] }];
}

/** The known name between the quotes of the unknown one, wherever it stands in the part's line. */
function renamed(subject: Subject, { part, params, code }: Problem, near: string): readonly Fix[] {
  const place = subject.places.get(part);
  const quoted = `"${String(params.name)}"`;
  const at = place === undefined ? -1 : (subject.lines[place.line] ?? '').indexOf(quoted, code === 'unknown-step' ? 0 : place.at);
  if (place === undefined || at < 0) return [];
  return [{ title: message('Write "{near}"', { near }), preferred: true, edits: [{ line: place.line, at: at + 1, to: at + quoted.length - 1, text: near }] }];
}
