// What the rules and guidelines of an age forbid or advise against (court/youth.ts). Cautions, never verdicts: hints all.
import { levelAtStart, levelWords } from '../words/say-level.ts';
import { allOf, type Param } from '../message/message.ts';
import { computed, fromMemory, read } from '../court/sources.ts';
import { check, type Found } from './check.ts';
import type { Subject } from './subject.ts';
import { youthNotesFor, type YouthNote, type YouthTopic } from '../court/youth.ts';
import type { Source } from '../court/sources.ts';

const why = 'What children of an age may do differs from league to league. The tool knows a few published guidelines and says so; it is no referee. Your local rules and a qualified coach decide. Where your league allows it, write allow with the code and your reason.';

export const youthScreens = check({
  code: 'youth-screens',
  severity: 'hint',
  needs: 'play',
  source: computed('a summary of several national youth rules, named where it speaks'),
  message: '{who} screens in a play for {level}: {advice}. Your local rules and a qualified coach decide.',
  manual: { title: 'Screens at a young age', why, wrong: 'level u10\nplay "A"\nfrom 5-out\n5 screens for 3\n3 cuts off 5 to rim\nlook 3: layup', right: 'level u14\nplay "A"\nfrom 5-out\n5 screens up for 3\n3 cuts off 5 to rim\nlook 3: layup' },
  *find(subject) {
    const advice = adviceOn(subject, 'screens');
    const screen = subject.play.steps.flatMap(({ actions }) => actions).find(({ kind }) => kind === 'screen');
    if (advice !== undefined && screen !== undefined) yield { part: screen.id, params: { who: screen.who, ...advice.params }, source: advice.source };
  },
});

export const youthZone = check({
  code: 'youth-zone',
  severity: 'hint',
  needs: 'line',
  source: read('NBA and USA Basketball age-appropriate rules; a national body and a club tournament, named where it speaks'),
  message: 'This play is against a zone, for {level}: {advice}. Your local rules and a qualified coach decide.',
  manual: { title: 'A zone at a young age', why, wrong: 'level u12\nplay "A"\nfrom 5-out\nagainst 2-3\n1 passes to 2\nlook 2: jumper', right: 'level u12\nplay "A"\nfrom 5-out\nagainst man\n1 passes to 2\nlook 2: jumper' },
  *find(subject) {
    const { value } = subject.play.defence;
    if (value.kind === 'zone' && !isPress(subject)) yield* cautioned(subject, 'zone', 'against');
  },
});

export const youthPress = check({
  code: 'youth-press',
  severity: 'hint',
  needs: 'line',
  source: fromMemory('NBA and USA Basketball age-appropriate rules'),
  message: 'This play is against a press, for {level}: {advice}. Your local rules and a qualified coach decide.',
  manual: { title: 'A press at a young age', why, wrong: 'level u10\nplay "A"\nfrom 5-out\nagainst man press\n1 passes to 2\nlook 2: jumper', right: 'level u10\nplay "A"\nfrom 5-out\nagainst man\n1 passes to 2\nlook 2: jumper' },
  *find(subject) {
    if (isPress(subject)) yield* cautioned(subject, 'press', 'against');
  },
});

export const youthThree = check({
  code: 'youth-three',
  severity: 'hint',
  needs: 'line',
  source: read('NBA and USA Basketball age-appropriate rules'),
  message: 'A three in a play for {level}: {advice}. Your local rules and a qualified coach decide.',
  manual: { title: 'A three at a young age', why, wrong: 'level u12\nplay "A"\nfrom 5-out\n1 passes to 2\nlook 2: three', right: 'level u12\nplay "A"\nfrom 5-out\n1 passes to 2\nlook 2: jumper' },
  *find(subject) {
    // Without a line its own check speaks.
    if (subject.court.three === undefined) return;
    const shot = subject.play.steps.flatMap(({ actions, looks }) => [...actions, ...looks.flatMap(({ tail }) => tail)]).find((action) => action.kind === 'shot' && action.shot.value === 'three');
    if (shot !== undefined) yield* cautioned(subject, 'three-point value', shot.id);
  },
});

export const youthRingAndBall = check({
  code: 'youth-ring-and-ball',
  severity: 'hint',
  needs: 'line',
  source: read('FIBA Mini 2005, Art. 4'),
  message: '{level} with the {rules} rules: {advice}. Write “rules mini” if you play so. Your local rules and a qualified coach decide.',
  manual: { title: 'Ring and ball at a young age', why, wrong: 'level u10\nrules fiba\nplay "A"\nfrom 5-out\n1 passes to 2\nlook 2: jumper', right: 'level u10\nrules mini\nplay "A"\nfrom 5-out\n1 passes to 2\nlook 2: jumper' },
  *find(subject) {
    // Asked only of one who chose a rule set: nothing is demanded that was not asked for.
    if (subject.play.rules.origin === 'default' || subject.rules.id === 'mini') return;
    const notes = [...notesOn(subject, 'ring height'), ...notesOn(subject, 'ball size')];
    const source = notes[0]?.source;
    if (source !== undefined) yield { part: 'rules', params: { level: levelAtStart(subject.play.level.value), rules: subject.rules.name, advice: allOf(notes.map(({ text }) => text)) }, source };
  },
});

function isPress({ play }: Subject): boolean {
  const { value } = play.defence;
  return ('press' in value && value.press === true) || /press/.test(value.zone ?? '') || play.situation.some((words) => words === 'against a press');
}

function notesOn({ play }: Subject, topic: YouthTopic): readonly YouthNote[] {
  return youthNotesFor(play.level.value).filter((note) => note.topic === topic);
}

function adviceOn(subject: Subject, topic: YouthTopic): { readonly params: { readonly level: Param; readonly advice: Param }; readonly source: Source } | undefined {
  const notes = notesOn(subject, topic);
  const source = notes[0]?.source;
  return source === undefined ? undefined : { params: { level: levelWords(subject.play.level.value), advice: notes.map(({ text }) => text) }, source };
}

function* cautioned(subject: Subject, topic: YouthTopic, part: string): Iterable<Found<'{level} {advice}'>> {
  const advice = adviceOn(subject, topic);
  if (advice !== undefined) yield { part, params: advice.params, source: advice.source };
}
