import { expectedAfter } from '../../language/grammar/expected.ts';
import { buildParser } from '../../language/grammar/reading/line-parser.ts';
import { parseLine } from '../../language/grammar/parse-line.ts';
import { drawSentence, pick, random } from '../grammar/sentences.ts';

export interface Figure {
  readonly name: string;
  readonly value: number;
  readonly unit: string;
  readonly budget: number;
}

/** Lines as coaches write them: 2,000 different ones from a few dozen frames, 20 to 90 characters. */
function coachLines(count: number): readonly string[] {
  const next = random(7);
  const one = (...words: readonly string[]): string => pick(words, next);
  const player = (): string => one('1', '2', '3', '4', '5');
  const spot = (): string => `${one('left', 'right', 'the left', 'weak-side', 'ball-side')} ${one('wing', 'elbow', 'corner', 'block', 'slot', 'short corner', 'dunker spot')}`;
  const frames: readonly (() => string)[] = [
    () => `${player()} ${one('cuts', 'sprints', 'drifts', 'lifts', 'clears', 'back-cuts')} off ${player()} to ${spot()}`,
    () => `${player()} ${one('ball-screens', 'screens down', 'back-screens', 'flare-screens', 'screens away')} for ${player()}, then ${one('rolls', 'pops', 'slips', 'dives to rim')}`,
    () => `${player()} passes to ${player()} and cuts to ${spot()} via ${spot()}`,
    () => `once ${player()} is set, ${player()} drives off ${player()} to ${spot()}`,
    () => `look ${player()} "${one('pull-up', 'corner', 'slip')}" as he comes off ${player()}: ${one('jumper', 'three', 'layup', 'lob, dunk')}`,
    () => `step "${one('Zip', 'Middle', 'Late')} ${player()}${player()}" instead of "${one('Zip', 'Middle')}" when X${player()} ${one('shows on', 'switches to', 'goes under')} ${player()}`,
    () => `rebound ${player()}, ${player()}, ${player()} crash, ${player()} and ${player()} get back # triangle ${player()}`,
    () => `${player()} and ${player()} pop to ${spot()} ${one('1', '2', '1.5')} seconds later, ${player()} dribbles at ${player()}`,
    () => `call with ${one('22', '24', '26', '31')}${player()} to ${one('38', '35', '44')} on the clock, shot clock ${one('24', '14', '20')}`,
    () => `X${player()} ${one('denies', 'trails', 'switches to', 'goes over')} ${player()}`,
  ];
  const lines = new Set<string>();
  while (lines.size < count) lines.add(pick(frames, next)());
  return [...lines];
}

function quantile(times: number[], share: number): number {
  times.sort((a, b) => a - b);
  return times[Math.min(times.length - 1, Math.floor(times.length * share))]!;
}

function time(action: (line: string) => unknown, lines: readonly string[]): number[] {
  return lines.map((line) => {
    const start = performance.now();
    action(line);
    return (performance.now() - start) * 1000;
  });
}

/** A line's cost to read, right and wrong, warm and cold. Microseconds and milliseconds of the machine it runs on. */
export async function bench(): Promise<Figure[]> {
  const cold = performance.now();
  const fresh = buildParser();
  fresh.parse(fresh.lexer.lex('4 ball-screens for 3, then rolls'));
  const coldMs = performance.now() - cold;
  const lines = coachLines(2000);
  const firstPass = performance.now();
  for (const line of lines) parseLine(line);
  const firstPassMs = performance.now() - firstPass;
  for (let warm = 0; warm < 2; warm++) for (const line of lines) parseLine(line);
  const right = time(parseLine, lines);
  const next = random(11);
  const wrong = lines.slice(0, 400).map((line) => {
    const at = 2 + Math.floor(next() * (line.length - 3));
    return line.slice(0, at) + line.slice(at + 1);
  });
  for (const line of wrong) parseLine(line);
  const broken = time(parseLine, wrong);
  const drawn = Array.from({ length: 1000 }, (_, seed) => drawSentence(seed));
  for (const line of drawn) parseLine(line);
  const odd = time(parseLine, drawn);
  const beginnings = lines.slice(0, 400).map((line) => line.slice(0, 3 + Math.floor(next() * (line.length - 3))));
  for (const line of beginnings) expectedAfter(line);
  const expecting = time(expectedAfter, beginnings);
  const figure = (name: string, value: number, unit: string, budget: number): Figure => ({ name, value: Math.round(value * 10) / 10, unit, budget });
  return [
    figure('line: parser built and first line read', coldMs, 'ms', 250),
    figure('line: a cold book of 2,000 different lines, the parser built too', firstPassMs, 'ms', 250),
    figure('line: warm, median', quantile(right, 0.5), 'µs', 40),
    figure('line: warm, p95', quantile(right, 0.95), 'µs', 60),
    figure('line: drawn at random, p95', quantile(odd, 0.95), 'µs', 120),
    figure('wrong line told and mended, median', quantile(broken, 0.5), 'µs', 1500),
    figure('wrong line told and mended, p95', quantile(broken, 0.95), 'µs', 4000),
    figure('words expected at the cursor, p95', quantile(expecting, 0.95), 'µs', 2000),
  ];
}
