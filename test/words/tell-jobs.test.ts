// What is handed to each player: his own jobs.
import { readdirSync, readFileSync } from 'node:fs';
import { describe, expect, test } from 'vitest';
import { emptyBook, openFile } from '../../language/book/book.ts';
import { createKeeper } from '../../language/keeper.ts';
import type { Action, BodyId } from '../../language/play/play.ts';
import { OFFENCE } from '../../language/play/play.ts';
import { playbackOf } from '../../language/playback/playback-of.ts';
import { sayTenths } from '../../language/words/say-seconds.ts';
import { tellJobs } from '../../language/words/tell-jobs.ts';
import { compileText } from '../checks/compiled.ts';

const names = readdirSync('examples').filter((name) => name.endsWith('.play'));
const book = names.reduce((known, name) => openFile(known, `file:///${name}`, readFileSync(`examples/${name}`, 'utf8')), emptyBook);
const keeper = createKeeper();
const examples = names.flatMap((name) => keeper.playsOf(book, `file:///${name}`)).map((compiled) => [compiled.play.name, { ...compiled, jobs: tellJobs(compiled.play, compiled.timeline) }] as const);

/** His jobs as they are read: the step's head, or time and words. */
function readBy(text: string, who: BodyId): readonly string[] {
  const { play, timeline } = compileText(text).plays[0]!;
  return tellJobs(play, timeline).find((one) => one.who === who)!.jobs.map(({ text: told }) => told);
}

const lighthouse = readFileSync('examples/lighthouse.play', 'utf8');

describe('a player reads', () => {
  test('where he starts, what he does and waits for, his looks and those he serves, each counter, and what comes after the shot', () => {
    expect(readBy(lighthouse, '3')).toEqual([
      'Start at left block.',
      'Zip:',
      'When 5’s screen is set, cut off 5 to the top.',
      'Middle:',
      'Catch 1’s pass.',
      'When 4’s screen is set, drive off 4 to right elbow.',
      'Your look (1 of 3) “pull-up”: shoot a jumper.',
      'Look for 4 (2 of 3) on the roll: pass to 4, who lays it up.',
      'Look for 2 (3 of 3) “corner”: pass to 2, who shoots a three.',
      'Slip, instead of Middle, when X4 shows on 3:',
      'Catch 1’s pass.',
      'Look for 4: lob to 4, who lays it up.',
      'After the shot: get back on defence.',
    ]);
  });

  test('that he stays where he stands, where a step has nothing for him', () => {
    expect(readBy(lighthouse, '4').slice(0, 3)).toEqual(['Start at right mid-post.', 'Zip:', 'Stay at right mid-post.']);
    // He has gone there in the step before.
    expect(readBy(lighthouse, '2')).toContain('Stay at right corner.');
  });

  test('who has the ball first, or throws it in', () => {
    expect(readBy(lighthouse, '1')[0]).toBe('Start at the top. You have the ball.');
    expect(readBy('play "A"\n  from 1 at top, 2 at right wing, 3 at left wing, 5 at nail\n  4 inbounds from the left sideline\n  4 inbounds to 1\n  look 1: three\n', '4')[0]).toBe('Start at left sideline. You throw in.');
  });

  const line = (lines: string) => `play "A"\n  from horns, ball with 1\n  step "One"\n${lines.replace(/^/gm, '    ')}\n`;
  test.each([
    ['1', '4 ball-screens for 1, then rolls\n1 drives off 4 to right elbow\nAs 4 rolls, 5 lifts to left slot', 'When 4’s screen is set, drive off 4 to right elbow.'],
    ['5', '4 ball-screens for 1, then rolls\n1 drives off 4 to right elbow\nas 4 rolls, 5 lifts to left slot', 'As 4 rolls, lift to left slot.'],
    ['2', '1 dribbles to left wing, then 2 cuts to rim', 'Once 1 dribbles to left wing, cut to the rim.'],
    ['2', '1 dribbles at 2, then hands off to 2, then 2 drives to rim', 'Take 1’s hand-off, then drive to the rim.'],
    ['3', 'once 1 passes to 3, 2 cuts to rim\n1 passes to 3, then cuts to rim', 'Catch 1’s pass.'],
    ['1', '1 keeps his dribble', 'Keep your dribble.'],
    ['2', '1 passes to 3\n2 cuts once 3 catches', 'Once 3 catches, cut.'],
    ['3', '1 passes to 3\n3 drives once 3 catches', 'Once you catch, drive to the rim.'],
  ] as const)('%s, of “%s”', (who, lines, told) => expect(readBy(line(lines), who)).toContain(told));

  test('that he comes to the ball, not so many metres in front of the thrower', () => {
    const jobs = readBy('play "Side"\n  from box\n  3 inbounds from the right sideline\n  step "Get"\n    1 moves toward the ball\n    3 inbounds to 1\n    look 1: three\n', '1');
    expect(jobs).toContain('Move to the ball.');
    expect(jobs.join(' ')).not.toContain('in front of');
  });

  test.each(['5 moves to the ball', '5 moves toward the ball', '5 moves to 3 m in front of 3'])('the same words in his jobs, on his bar and in the play told: %s', (written) => {
    const text = `play "Side"\n  from box\n  3 inbounds from the right sideline\n  step "Get"\n    ${written}\n    3 inbounds to 5\n    look 5: three\n`;
    const said = written.replace('toward', 'to');
    const { says, told } = playbackOf(compileText(text).plays[0]!);
    expect(says['get/5.1']).toBe(said);
    expect(told.map((one) => one.text)).toContain(`${said}.`);
    expect(readBy(text, '5')).toContain(`${said.replace(/^5 (\w)(\w+)s/, (_, first: string, more: string) => first.toUpperCase() + more)}.`);
  });

  test('a look that two may take as his own, each of them', () => {
    const text = line('1 dribbles to top\nlook 2 or 3 "corner": three');
    for (const who of ['2', '3'] as const) expect(readBy(text, who)).toContain('Your look “corner”: 1 passes to you, shoot a three.');
    expect(readBy(text, '1')).toContain('Look for 2 or 3 “corner”: pass to 2 or 3, who shoots a three.');
  });

  test('his own note, and nobody else’s', () => {
    const text = line('1 dribbles to top\nnote 3 "keep low"\nlook 1: jumper');
    expect(readBy(text, '3')).toContain('Note: keep low');
    expect(readBy(text, '2').join()).not.toContain('keep low');
  });

  test('of a line that a counter keeps, in the counter too', () => {
    const harbour = examples.find(([name]) => name === 'Harbour')![1].jobs.find(({ who }) => who === '3')!.jobs;
    const slack = harbour.findIndex(({ text }) => text.startsWith('Slack, instead of Berth'));
    expect(harbour[slack + 1]!.text).toBe('Cut to left corner.');
  });
});

test('a player has the name that the roster gives his number, and only he', () => {
  const { play, timeline } = compileText(`roster "U14"\n  3 "Moss"\n  7 "Rook"\n\n${lighthouse.slice(lighthouse.indexOf('play'))}`).plays[0]!;
  expect(tellJobs(play, timeline).map(({ name }) => name)).toEqual([undefined, undefined, 'Moss', undefined, undefined]);
});

describe.each(examples)('%s', (_, { play, timeline, jobs }) => {
  const steps = play.steps.flatMap((step) => step.actions);
  const partners = (action: Action): readonly BodyId[] => [action.who, ...(action.kind === 'pass' || action.kind === 'hand-off' ? [action.to] : [])];

  test('every line stands in the jobs of all who do something in it, and of nobody else', () => {
    expect(jobs.map(({ who }) => who)).toEqual(OFFENCE);
    const lines = new Map<string, Action[]>();
    for (const action of steps) lines.set(action.line, [...(lines.get(action.line) ?? []), action]);
    for (const actions of lines.values()) {
      const parts = new Set(actions.map(({ id }) => id));
      const doers = new Set(actions.flatMap(partners).filter((who) => !who.startsWith('X')));
      const told = jobs.filter(({ jobs: own }) => own.some(({ part }) => parts.has(part))).map(({ who }) => who);
      expect(told.toSorted(), actions[0]!.line).toEqual([...doers].sort());
    }
  });

  test('every look stands in the jobs of those it is for and of those who serve it', () => {
    for (const look of play.steps.flatMap(({ looks }) => looks)) {
      const doers = new Set<string>([...look.who.map(String), ...look.tail.map(({ who }) => who)]);
      expect(jobs.filter(({ jobs: own }) => own.some(({ part }) => part === look.id)).map(({ who }) => who), look.id).toEqual([...doers].sort());
    }
  });

  test('every time is that of an event of its part in that run-through, and a look’s that of its list', () => {
    for (const { who, jobs: own } of jobs)
      for (const { part, at, run } of own) {
        if (at === undefined) continue;
        const found = timeline.runs.find(({ id }) => id === run)!;
        const time = timeline.times.looks.find(({ look }) => look === part);
        const times = found.events.filter((event) => event.part === part || event.part.startsWith(`${part}/`)).map(({ at: moment }) => moment);
        expect(times, `${who} ${part}`).toContain(at);
        if (time !== undefined && play.steps.some(({ looks }) => looks.some(({ id, who: lookers }) => id === part && lookers.map(String).includes(who)))) expect(sayTenths(at)).toBe(sayTenths(time.typical));
      }
  });

  test('told in whole sentences to himself: none of his jobs speaks of him as of another', () => {
    for (const { who, jobs: own } of jobs) for (const { text, head } of own) {
      if (head === true) continue;
      expect(text).not.toMatch(new RegExp(`\\b(to|for|off|As|Once|at) ${who}\\b(?! on the clock| seconds?)`));
      expect(text).toMatch(/^(Note: .*|[A-Z].*\.)$/);
    }
  });
});

test('a mirrored play says the same with left and right swapped, at the same times', () => {
  const [row, left] = ['Skiff', 'Skiff left'].map((name) => examples.find(([one]) => one === name)![1].jobs.map(({ jobs }) => jobs));
  const swapped = (text: string) => text.replace(/\b(left|right)\b/g, (side) => (side === 'left' ? 'right' : 'left'));
  expect(left).toEqual(row!.map((jobs) => jobs.map((job) => ({ ...job, text: swapped(job.text) }))));
});

test('what is run again is told each time it is run, with the men whose turn it is', () => {
  const drift = examples.find(([name]) => name === 'Slack water')![1].jobs;
  const times = drift.find(({ who }) => who === '1')!.jobs.filter(({ text }) => text.startsWith('Cut to the rim')).map(({ at }) => at!);
  expect(times).toHaveLength(2);
  expect(times[1]! - times[0]!).toBeGreaterThan(5000);
});
