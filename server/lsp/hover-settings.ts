// What the lines mean that hold for a whole file or play: whose legs, whose rules.
import type { Position, Range } from 'vscode-languageserver-types';
import { blockAtLine } from '../../language/book/book.ts';
import type { RuleSetId } from '../../language/court/rule-set.ts';
import { ruleSet } from '../../language/court/rule-sets.ts';
import { youthNotesFor, type LevelId } from '../../language/court/youth.ts';
import { message, type Say } from '../../language/message/message.ts';
import { LEVELS, topSpeed } from '../../language/motion/levels.ts';
import { levelAtStart } from '../../language/words/say-level.ts';
import { rulesWords } from '../../language/words/say-rules.ts';
import type { OpenDocument } from './documents.ts';
import { plain } from './plain.ts';

/** Such a line need not stand in a play: its own words are asked, not what has been compiled. */
export function tellSetting({ file }: OpenDocument, { line, character }: Position, say: Say): { readonly parts: readonly string[]; readonly range: Range } | undefined {
  const { block, firstLine } = blockAtLine(file, line);
  const tree = block.lines[line - firstLine]?.parsed.tree;
  if (tree === undefined || character < tree.at || character > tree.to) return undefined;
  const range = { start: { line, character: tree.at }, end: { line, character: tree.to } };
  if (tree.$type === 'Level') return { parts: tellLevel(tree.level, say), range };
  if (tree.$type === 'Rules') return { parts: [...[tree.rules, ...tree.also].map((rules) => tellRules(rules, say)), say(message('*These books change: your own league’s sheet decides.*'))], range };
  return undefined;
}

function tellLevel(id: LevelId, say: Say): readonly string[] {
  const level = LEVELS[id];
  const legs = message('A sprint reaches {sprint} m/s, an ordinary cut {cut} m/s. A pass leaves the hand {pass} s after the catch, a jump shot {jumper} s.', {
    sprint: level.vmax, cut: topSpeed(level, 'set').toFixed(1), pass: level.passRelease, jumper: level.jumperRelease,
  });
  const notes = youthNotesFor(id).map(({ text, source }) => `- ${say(message('{note} ({source})', { note: text, source: plain(source.text) }))}`);
  return [
    `**${say(levelAtStart(id))}**`,
    say(legs),
    say(message('*Figures of a model, not a promise: time your own team.*')),
    ...(notes.length === 0 ? [] : [[say(message('*At this age, in some places; your own league’s sheet decides:*')), ...notes].join('\n')]),
  ];
}

function tellRules(id: RuleSetId, say: Say): string {
  const { court, counts, edition } = ruleSet(id);
  const { shotClock, shotClockAfterOffensiveRebound: again } = counts;
  const name = rulesWords(id);
  const facts = [
    shotClock === undefined ? message('No shot clock.') : message('Shot clock {seconds} s, {again} s after an offensive rebound.', { seconds: shotClock.value, again: (again ?? shotClock).value }),
    message('{throwIn} s to throw in, {lane} s in the lane.', { throwIn: counts.throwIn.value, lane: counts.threeSeconds.value }),
    counts.backcourt === undefined ? message('No count in the backcourt.') : message('{seconds} s to leave the backcourt.', { seconds: counts.backcourt.value }),
    court.threeRadius === undefined || court.threeCorner === undefined ? message('No three-point line.') : message('Three-point line {arc} from the ring’s centre, {corner} in the corners.', { arc: court.threeRadius.printed, corner: court.threeCorner.printed }),
  ];
  return [say(message('**{rules}**', { rules: name })), facts.map(say).join(' '), say(message('*After: {edition}.*', { edition: plain(edition) }))].join('  \n');
}
