// `setwright draw FILE`: every step of a play, one way through it, or the floor at a moment.
import { InvalidArgumentError, type Command } from 'commander';
import type { Playback } from '../../language/playback/playback.ts';
import { drawSvg } from '../../language/picture/draw.ts';
import { sceneAt } from '../../language/picture/scene.ts';
import { drawPlay, drawStrip } from '../../language/picture/strip.ts';
import { sayMoment } from '../../language/words/say-seconds.ts';
import { CallError } from './call-error.ts';
import { readFiles } from './files.ts';
import { playbackOf } from '../../language/playback/playback-of.ts';
import { remarkOnLinesNotRead } from './lines-not-read.ts';
import { openBook } from './open-book.ts';
import { onePlay, playsNamed } from './plays-named.ts';
import { writeResult } from './write-result.ts';
import { withExamples } from './examples.ts';
import { remark } from './terminal.ts';

interface DrawOptions {
  readonly play?: string;
  readonly run?: string;
  readonly at?: number;
  readonly defence: boolean;
  readonly output?: string;
}

export function addDraw(program: Command): void {
  const command = program
    .command('draw')
    .argument('<file>', 'a file; - reads standard input')
    .option('--play <name>', 'the play of this name, or the one that stands at FILE:LINE; without it the first')
    .option('--at <seconds>', 'the floor at this many seconds after the call', seconds)
    .option('--run <way>', 'only this way through the play: a look’s name, a step’s name, or a number from 1')
    .option('--no-defence', 'leave the defenders out of a picture at a moment')
    .option('-o, --output <file>', 'write to this file instead of standard output')
    .summary('draw a play as SVG')
    .description('Draws a play as one SVG file: one frame a step, counters too, each with its looks in the order they are read. With --run only the steps of one way through the play, with --at the floor at a moment (of the first way, or the one that is named).')
    .action((name: string, options: DrawOptions) => {
      const files = openBook(readFiles([name]));
      const chosen = onePlay(files, options.play);
      const playback = playbackOf(chosen.play);
      remarkOnLinesNotRead([chosen]);
      const run = runNamed(playback, options.run);
      const others = playsNamed(files, undefined).length - 1;
      if (options.play === undefined && others > 0) remark(`Drawn is “${playback.play.name}”, the first of ${others + 1} plays; another one with --play.`);
      const end = playback.runs.find(({ id }) => id === run)!.end;
      if (options.at !== undefined && options.at * 1000 > end) remark(`This way is over after ${sayMoment(end)}: its end is drawn.`);
      writeResult(drawn(playback, run, options), options.output);
    });
  withExamples(command, 'setwright draw examples/lighthouse.play -o lighthouse.svg', 'setwright draw examples/last-shot.play --play "Buoy" --run "corner" -o corner.svg', 'setwright draw examples/lighthouse.play --at 4.5 --run "pull-up" -o there.svg');
}

function drawn(playback: Playback, run: string, { at, run: named, defence }: DrawOptions): string {
  if (at !== undefined) return drawSvg(sceneAt(playback, run, at * 1000, { defence }));
  return named === undefined ? drawPlay(playback) : drawStrip(playback, run);
}

function seconds(text: string): number {
  const value = Number(text);
  if (!(value >= 0)) throw new InvalidArgumentError('A time is a number of seconds, such as 4.5.');
  return value;
}

/** A run-through by its place from 1, its look's or step's name, or its id. */
export function runNamed(playback: Playback, wanted: string | undefined): string {
  const { runs } = playback;
  if (runs.length === 0) throw new CallError(`"${playback.play.name}" has nothing to show yet: it needs a line such as: 1 dribbles to left wing`);
  if (wanted === undefined) return runs[0]!.id;
  const numbered = /^\d+$/.test(wanted) ? runs[Number(wanted) - 1] : undefined;
  const word = wanted.toLowerCase();
  const named = runs.find(({ id, label, look }) => id === word || label.toLowerCase() === word || playback.looks.find((one) => one.id === look)?.label.toLowerCase() === word);
  const found = numbered ?? named;
  if (found !== undefined) return found.id;
  throw new CallError(`There is no way called "${wanted}" through "${playback.play.name}". There are: ${runs.map(({ label }, at) => `${at + 1} ${label}`).join('; ')}.`);
}
