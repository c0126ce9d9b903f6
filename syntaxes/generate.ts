// Writes setwright.tmLanguage.json, the colours of a play without a server: `node syntaxes/generate.ts`. The verbs come from the
// grammar's own table; a test says when the file is stale.
import { writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { verbs } from '../language/grammar/verbs.ts';

const file = join(import.meta.dirname, 'setwright.tmLanguage.json');

/** Longer words first: `clears out` before `clears`. Blanks and hyphens may stand for each other. */
const any = (words: readonly string[]): string =>
  [...new Set(words)].sort((a, b) => b.length - a.length || (a < b ? -1 : 1)).map((word) => word.replace(/[- ]/g, '[ -]')).join('|');
const whole = (words: readonly string[]): string => `(?i)(?<![\\w-])(?:${any(words)})(?![\\w-])`;
const starting = (words: readonly string[]): string => `(?i)^(\\s*)(${any(words)})(?![\\w-])`;
const listed = (words: string): string[] => words.split(', ');

const name = '"[^"]*"?|“[^“”"]*”?';
const closedName = '"[^"]*"|“[^“”"]*”';
const openers = listed('play, alignment, roster, book');
const headers = listed(
  'notation, use, level, rules, section, tags, from, ball with, against, call, shot within, shot between, shot before the horn, leave, situation, already set, clock at, inbound within, rebound, note, must have, must not, must, allow, spot',
);
const places = listed(
  'rim, basket, block, blocks, low post, low posts, mid-post, mid-posts, elbow, elbows, nail, high post, high posts, top, top of the key, slot, slots, wing, wings, corner, corners, short corner, short corners, dunker spot, dunker spots, free-throw line, free-throw line extended, half court, hash, hashes, backcourt, backcourt top, backcourt wing, backcourt elbow, backcourt block, backcourt corner, midcourt, far free-throw line, far baseline, baseline, sideline, far sideline, lane, lane line, left side, right side, near side, far side, side, extended',
);
const sides = listed('left, right, ball-side, weak-side, strong-side, near, far, same, opposite, middle');
const alignments = listed('box, horns, stack, diamond, line, spread, four corners, four-man');
const shots = listed('layup, lay-up, dunk, jumper, jump shot, three, three-pointer, hook, hook shot, tip in, floater, runner, bank shot, set shot, put-back, putback, finger roll, bounce-pass, skip-pass, chest-pass, overhead-pass, baseball-pass, kick out');
const order = listed('as, while, whilst, once, when, until, then, next, afterwards, after that, instead of, after, first, again from, repeats, mirrors, mirrored, continues, otherwise, later, swapped, up to');
const joints = listed(
  'to, off, for, via, through to, on, at, in, and, or, with, of, by, the, into, toward, over, under, around, behind, in front of, between, beside, above, below, inside, outside, is, away, down, up, across, before the screen, after a miss, on the clock, on a miss, shot clock, everyone else, everyone, both, he, him, them, also',
);

const tag = (scope: string): { readonly name: string } => ({ name: `${scope}.setwright` });
const opener = (words: readonly string[], scope: string, named: string) => ({
  match: `(?i)^(\\s*)(${any(words)})(?![\\w-])(?:\\s+(${closedName}))?`,
  captures: { 2: tag(scope), 3: tag(named) },
});

const rules = {
  comment: { ...tag('comment.line.number-sign'), match: '#.*$' },
  opener: opener(openers, 'keyword.control.opener', 'entity.name.class'),
  step: opener(['step'], 'keyword.control.step', 'entity.name.type.step'),
  look: { match: starting(['look', 'ends']), captures: { 2: tag('keyword.control.look') } },
  header: { match: starting(headers), captures: { 2: tag('keyword.other.header') } },
  name: { ...tag('string.quoted.double'), match: name },
  measure: {
    match: '(?i)(?<![\\w.-])(\\d+(?:\\.\\d+)?)\\s*(seconds?|secs?|s|metres?|meters?|centimetres?|centimeters?|cm|m/s|ft/s|feet|foot|ft|inches|inch|m)(?![\\w-])',
    captures: { 1: tag('constant.numeric'), 2: tag('keyword.other.unit') },
  },
  formation: { ...tag('support.constant.formation'), match: `(?i)(?<![\\w-])(?:\\d-out(?: \\d-in)?|\\d(?:-\\d)+(?: (?:high|low))?|(?<=from )(?:${any(alignments)}))(?![\\w-])` },
  action: { ...tag('entity.name.function.action'), match: whole([...verbs.keys()]) },
  shot: { ...tag('support.function.shot'), match: whole(shots) },
  place: { ...tag('support.type.place'), match: whole(places) },
  side: { ...tag('support.type.side'), match: whole(sides) },
  order: { ...tag('keyword.control.order'), match: whole(order) },
  defender: { ...tag('variable.language.defender'), match: '(?i)(?<![\\w-])X[1-5](?![\\w-])' },
  player: { ...tag('variable.other.player'), match: '(?<![\\w.-])[1-5](?![\\w-]|\\.\\d)' },
  joint: { ...tag('keyword.operator.word'), match: whole(joints) },
  number: { ...tag('constant.numeric'), match: '(?<![\\w.])-?\\d+(?:\\.\\d+)?(?![\\w-])' },
};

/** The grammar as its file has it. */
export function colours(): string {
  const patterns = Object.keys(rules).map((rule) => ({ include: `#${rule}` }));
  return `${JSON.stringify({ name: 'Setwright play', scopeName: 'source.setwright', patterns, repository: rules }, null, 2)}\n`;
}

if (import.meta.main) writeFileSync(file, colours());
